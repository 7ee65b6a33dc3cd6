package datumpeg.analysis.adjust;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Data of the NIST Statistical Reference Datasets (StRD, itl.nist.gov/div898/strd). SiRstv, AtmWtAg
 * and Norris as carried by the tests of SciPy (nist_anova, nist_linregress); Mavro as published;
 * NumAcc by their rule, recalled: a large mean and readings that step by 0.2 about it.
 */
final class ReferenceDatasets {
  /** Five instruments, five readings of each: 196 and these. */
  static final double[][] SI_RSTV = {
    {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
    {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
    {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
    {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
    {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}
  };

  /** Two instruments, 24 readings of each: 107.868 and these, in units of 1e-7. */
  private static final int[][] ATM_WT_AG = {
    {
      1568, 1465, 1572, 1785, 1446, 1903, 1526, 1494, 1616, 1587, 1519, 1486, 1419, 1569, 1508,
      1672, 1385, 1518, 1662, 1424, 1360, 1333, 1610, 1477
    },
    {
      1079, 1344, 1513, 1197, 1604, 1385, 1642, 1365, 1151, 1082, 1517, 1448, 1198, 1482, 1334,
      1609, 1101, 1512, 1469, 1360, 1254, 1261, 1450, 1368
    }
  };

  /** x and y in turn. */
  static final double[] NORRIS = {
    .2, .1, 337.4, 338.8, 118.2, 118.1, 884.6, 888.0, 10.1, 9.2, 226.5, 228.1, 666.3, 668.5, 996.3,
    998.5, 448.6, 449.1, 777.0, 778.9, 558.2, 559.2, .4, .3, .6, .1, 775.5, 778.1, 666.9, 668.8,
    338.0, 339.3, 447.5, 448.9, 11.6, 10.8, 556.0, 557.7, 228.1, 228.3, 995.8, 998.0, 887.6, 888.8,
    120.2, 119.6, .3, .3, .3, .6, 556.8, 557.6, 339.1, 339.3, 887.2, 888.0, 999.0, 998.5, 779.0,
    778.9, 11.1, 10.2, 118.3, 117.6, 229.2, 228.9, 669.1, 668.4, 448.9, 449.2, .5, .2
  };

  /** 2 and these, in units of 1e-5. */
  private static final int[] MAVRO = {
    180, 170, 180, 190, 180, 170, 150, 140, 150, 150, 170, 180, 180, 190, 190, 210, 200, 160, 140,
    130, 130, 150, 150, 160, 150, 140, 130, 140, 150, 140, 150, 160, 150, 160, 190, 200, 200, 210,
    220, 230, 240, 250, 270, 260, 260, 260, 270, 260, 250, 240
  };

  private ReferenceDatasets() {}

  static double[][] atmWtAg() {
    return Arrays.stream(ATM_WT_AG)
        .map(group -> Arrays.stream(group).mapToDouble(n -> decimal(1_078_680_000L + n)).toArray())
        .toArray(double[][]::new);
  }

  /** The double nearest to n·1e-7. */
  private static double decimal(long tenMillionths) {
    return tenMillionths / 1e7;
  }

  static double[] mavro() {
    return Arrays.stream(MAVRO).mapToDouble(n -> (200_000 + n) / 1e5).toArray();
  }

  /** Mean + 0.2, then mean + 0.1 and mean + 0.3 in turn, 500 times: 1001 readings. */
  static double[] numAcc(long whole) {
    List<Double> readings = new ArrayList<>();
    readings.add((whole * 10 + 2) / 10.0);
    for (int i = 0; i < 500; i++) {
      readings.add((whole * 10 + 1) / 10.0);
      readings.add((whole * 10 + 3) / 10.0);
    }
    return readings.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
