package datumpeg.bridge.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Text in letters of five by five characters, to be read from afar; only plain ASCII, so that every
 * terminal can show it. A text too long for one line goes on in the next row of letters.
 */
final class BigLetters {
  private static final int SIZE = 5;
  private static final int LETTERS_A_ROW = 13;

  /** Five rows of five, from the top left. */
  private static final Map<Character, String> DOTS =
      Map.ofEntries(
          Map.entry('A', ".###.#...#######...##...#"),
          Map.entry('B', "####.#...#####.#...#####."),
          Map.entry('C', ".#####....#....#.....####"),
          Map.entry('D', "####.#...##...##...#####."),
          Map.entry('E', "######....####.#....#####"),
          Map.entry('F', "######....####.#....#...."),
          Map.entry('G', ".#####....#..###...#.####"),
          Map.entry('H', "#...##...#######...##...#"),
          Map.entry('I', "#####..#....#....#..#####"),
          Map.entry('J', "..###...#....#.#..#..##.."),
          Map.entry('K', "#...##..#.###..#..#.#...#"),
          Map.entry('L', "#....#....#....#....#####"),
          Map.entry('M', "#...###.###.#.##...##...#"),
          Map.entry('N', "#...###..##.#.##..###...#"),
          Map.entry('O', ".###.#...##...##...#.###."),
          Map.entry('P', "####.#...#####.#....#...."),
          Map.entry('Q', ".###.#...##.#.##..#..##.#"),
          Map.entry('R', "####.#...#####.#..#.#...#"),
          Map.entry('S', ".#####.....###.....#####."),
          Map.entry('T', "#####..#....#....#....#.."),
          Map.entry('U', "#...##...##...##...#.###."),
          Map.entry('V', "#...##...##...#.#.#...#.."),
          Map.entry('W', "#...##...##.#.###.###...#"),
          Map.entry('X', "#...#.#.#...#...#.#.#...#"),
          Map.entry('Y', "#...#.#.#...#....#....#.."),
          Map.entry('Z', "#####...#...#...#...#####"),
          Map.entry('0', ".###.#..###.#.###..#.###."),
          Map.entry('1', "..#...##....#....#...###."),
          Map.entry('2', "####.....#.###.#....#####"),
          Map.entry('3', "####.....#.###.....#####."),
          Map.entry('4', "#..#.#..#.#####...#....#."),
          Map.entry('5', "######....####.....#####."),
          Map.entry('6', ".###.#....####.#...#.###."),
          Map.entry('7', "#####...#...#...#....#..."),
          Map.entry('8', ".###.#...#.###.#...#.###."),
          Map.entry('9', ".###.#...#.####....#.###."),
          Map.entry('.', "......................#.."),
          Map.entry('-', "..........#####.........."),
          Map.entry('/', "....#...#...#...#...#...."),
          Map.entry('+', "..#....#..#####..#....#.."),
          Map.entry('@', ".###.#.####.#.##.....####"),
          Map.entry('(', "...#...#....#....#.....#."),
          Map.entry(')', ".#.....#....#....#...#..."),
          Map.entry(';', ".......#.........#...#..."),
          Map.entry(' ', "........................."));

  private BigLetters() {}

  static List<String> lines(String text) {
    List<String> lines = new ArrayList<>();
    String upper = text.toUpperCase(Locale.ROOT);
    for (int from = 0; from < upper.length(); from += LETTERS_A_ROW) {
      String row = upper.substring(from, Math.min(upper.length(), from + LETTERS_A_ROW));
      for (int y = 0; y < SIZE; y++) {
        lines.add(line(row, y));
      }
      lines.add("");
    }
    return lines;
  }

  private static String line(String row, int y) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < row.length(); i++) {
      String dots = DOTS.getOrDefault(row.charAt(i), " ".repeat(SIZE * SIZE));
      line.append(dots, y * SIZE, (y + 1) * SIZE).append(' ');
    }
    return line.toString().replace('.', ' ').stripTrailing();
  }
}
