package datumpeg.bridge.cli;

import datumpeg.bridge.doctor.Examination;
import datumpeg.bridge.doctor.Machine;
import datumpeg.bridge.doctor.Symptom;
import datumpeg.bridge.json.JsonArray;
import datumpeg.bridge.json.JsonObject;
import datumpeg.bridge.natives.NativeFiles;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Prints what the machine lacks. */
record MetersDoctor(DatumpegCommand program, Machine machine) {
  /** The folder that stands for {@code /}; for looking at another machine's disk, and for tests. */
  private static final String ROOT = "DATUMPEG_DOCTOR_ROOT";

  static MetersDoctor ofThisMachine(DatumpegCommand program) {
    Map<String, String> environment = program.console().environment();
    return new MetersDoctor(
        program,
        new Machine(
            Path.of(environment.getOrDefault(ROOT, "/")),
            System.getProperty("os.name", ""),
            System.getProperty("os.arch", ""),
            environment,
            System.getProperty("user.name", ""),
            Tones::canBePlayed,
            NativeFiles::obstacle));
  }

  int run() {
    List<Symptom> symptoms = new Examination(machine).symptoms();
    if (program.json()) {
      Records.print(
          program,
          JsonObject.builder()
              .put("format", 1)
              .put("symptoms", JsonArray.of(symptoms.stream().map(MetersDoctor::json)))
              .build());
      return 0;
    }
    PrintStream out = program.console().out();
    for (Symptom symptom : symptoms) {
      out.printf("%-8s  %s: %s%n", word(symptom.state()), symptom.subject(), symptom.found());
      if (!symptom.help().isEmpty()) {
        out.println("          What helps: " + symptom.help());
      }
    }
    return 0;
  }

  private static String word(Symptom.State state) {
    return switch (state) {
      case WELL -> "well";
      case LACKING -> "LACKING";
      case UNKNOWN -> "-";
    };
  }

  private static JsonObject json(Symptom symptom) {
    return JsonObject.builder()
        .put("subject", symptom.subject())
        .put("state", symptom.state().text())
        .put("found", symptom.found())
        .put("help", symptom.help())
        .build();
  }
}
