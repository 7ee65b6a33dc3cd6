package datumpeg.desktop.compare;

import datumpeg.analysis.compare.ComparedGroup;
import datumpeg.analysis.compare.Comparer;
import datumpeg.analysis.compare.Comparison;
import datumpeg.analysis.compare.Factor;
import datumpeg.analysis.conform.OutcomeUnit;
import datumpeg.analysis.trend.DatedOutcome;
import datumpeg.analysis.trend.OutcomeNames;
import datumpeg.analysis.trend.RoundChoice;
import datumpeg.analysis.trend.TrendScale;
import datumpeg.bridge.exchange.TrendTable;
import datumpeg.desktop.control.Choice;
import datumpeg.desktop.control.Choices;
import datumpeg.desktop.source.AllOutcomes;
import datumpeg.desktop.text.Figures;
import datumpeg.desktop.text.Words;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Makes a page of what is asked. One thread at a time, any one. */
final class CompareMaker {
  private final Words words;
  private final Comparer comparer = new Comparer();

  CompareMaker(Words words) {
    this.words = words;
  }

  ComparePage page(CompareAsked asked) {
    List<DatedOutcome> outcomes = AllOutcomes.of(asked.state());
    OutcomeNames names = new OutcomeNames(outcomes);
    String check = check(names, asked);
    Comparison comparison = comparer.compare(outcomes, asked.question(check), asked.factor(), 1);
    boolean length = comparison.unit().equals(OutcomeUnit.MILLIMETRE.symbol());
    double factor = length ? words.figures().shown(OutcomeUnit.MILLIMETRE, 0.001) : 1;
    String unit = length ? words.figures().symbol(OutcomeUnit.MILLIMETRE) : comparison.unit();
    List<GroupStrip> strips =
        comparison.groups().stream().map(group -> strip(group, factor, unit)).toList();
    List<String> sentences = sentences(asked, comparison);
    return new ComparePage(
        choices(names, check),
        chosen(asked, check),
        asked.from(),
        asked.to(),
        strips,
        StripScale.of(strips),
        unit,
        sentences,
        spoken(strips, sentences),
        () -> TrendTable.of(List.of(comparison)).csv());
  }

  private static String check(OutcomeNames names, CompareAsked asked) {
    String chosen = asked.chosen(CompareMatter.CHECK);
    return !chosen.isEmpty() || names.checks().isEmpty() ? chosen : names.checks().get(0);
  }

  private static Map<CompareMatter, String> chosen(CompareAsked asked, String check) {
    Map<CompareMatter, String> chosen = new EnumMap<>(CompareMatter.class);
    for (CompareMatter matter : CompareMatter.values()) {
      chosen.put(matter, asked.chosen(matter));
    }
    chosen.put(CompareMatter.FACTOR, asked.factor().name());
    chosen.put(CompareMatter.CHECK, check);
    chosen.put(CompareMatter.ROUNDS, asked.question(check).rounds().name());
    chosen.put(CompareMatter.SCALE, asked.question(check).scale().name());
    return chosen;
  }

  private Map<CompareMatter, List<Choice>> choices(OutcomeNames names, String check) {
    Choices of = new Choices(words);
    Map<CompareMatter, List<Choice>> made = new EnumMap<>(CompareMatter.class);
    made.put(CompareMatter.FACTOR, of.worded("factor", Factor.values()));
    made.put(CompareMatter.CHECK, of.ofChecks(names.checks()));
    made.put(CompareMatter.TARGET, of.allOr(names.endings(check)));
    made.put(CompareMatter.CREW, of.allOr(names.crews()));
    made.put(CompareMatter.SITE, of.allOr(names.sites()));
    made.put(CompareMatter.METER, of.allOr(names.meters()));
    made.put(CompareMatter.SLAB, of.allOr(names.slabLayers()));
    made.put(CompareMatter.ROUNDS, of.worded("rounds", RoundChoice.values()));
    made.put(CompareMatter.SCALE, of.worded("scale", TrendScale.values()));
    return made;
  }

  private GroupStrip strip(ComparedGroup group, double factor, String unit) {
    List<Double> values = new ArrayList<>();
    List<Double> means = new ArrayList<>();
    group
        .jobs()
        .forEach(
            job -> {
              means.add(factor * job.mean());
              job.values().forEach(value -> values.add(factor * value));
            });
    OptionalDouble half = group.halfWidth();
    return new GroupStrip(
        group.name().isEmpty() ? words.text("compare.unnamed") : group.name(),
        words.count("compare.jobs", group.jobCount())
            + ", "
            + words.count("compare.outcomes", group.outcomeCount()),
        values,
        means,
        factor * group.mean(),
        half.isPresent() ? OptionalDouble.of(factor * half.getAsDouble()) : half,
        numbers(group, factor, unit));
  }

  private String numbers(ComparedGroup group, double factor, String unit) {
    String mean =
        group.halfWidth().isPresent()
            ? words.text(
                "compare.mean",
                Figures.signed(factor * group.mean(), unit),
                plain(factor, group.halfWidth(), unit),
                unit)
            : words.text("compare.mean-alone", Figures.signed(factor * group.mean(), unit), unit);
    String spread =
        group.observedSpread().isPresent()
            ? " "
                + words.text(
                    "compare.spread",
                    plain(factor, group.observedSpread(), unit),
                    plain(factor, group.ownSpread(), unit),
                    unit)
            : "";
    String scatter =
        group.meanScatter().isPresent()
            ? " " + words.text("compare.scatter", plain(factor, group.meanScatter(), unit), unit)
            : "";
    return mean + spread + scatter;
  }

  private static String plain(double factor, OptionalDouble value, String unit) {
    return Figures.signed(factor * value.orElse(0), unit).replace("+", "");
  }

  private List<String> sentences(CompareAsked asked, Comparison comparison) {
    List<String> sentences = new ArrayList<>();
    if (asked.state().jobs().stream().allMatch(job -> job.outcomes().isEmpty())) {
      sentences.add(words.text("compare.no-jobs"));
      return sentences;
    }
    if (comparison.groups().isEmpty() && asked.isFiltered()) {
      sentences.add(words.text("compare.none-fits"));
    } else {
      comparison.sentences().forEach(sentence -> sentences.add(words.told(sentence)));
    }
    if (comparison.severalLevels() > 0) {
      sentences.add(
          words.text("compare.several", comparison.severalLevels(), comparison.factor().plural()));
    }
    long waiting = AllOutcomes.waiting(asked.state());
    if (waiting > 0) {
      sentences.add(words.count("trend.jobs-waiting", waiting));
    }
    return sentences;
  }

  private String spoken(List<GroupStrip> strips, List<String> sentences) {
    List<String> parts = new ArrayList<>();
    strips.forEach(strip -> parts.add(strip.spoken()));
    parts.addAll(sentences);
    return String.join(" ", parts);
  }
}
