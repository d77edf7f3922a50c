package thudbook.predictions;

import static thudbook.predictions.Parameter.Scale.LINEAR;
import static thudbook.predictions.Parameter.Scale.LOGARITHMIC;

import java.util.ArrayList;
import java.util.List;
import thudbook.envelopes.Drive;
import thudbook.predictions.Parameter.Part;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/** The numbers of a stage: of its drive, of an envelope of its own, of its channel. */
final class StageParameters {
  private StageParameters() {}

  static List<Part<Stage>> of(Stage stage) {
    List<Part<Stage>> parts = new ArrayList<>();
    for (Part<Drive> part : ofDrive(stage.drive())) {
      parts.add(part.in("", drive -> new Stage(stage.channel(), drive, stage.envelope())));
    }
    if (stage.envelope() != null) {
      EnvelopeParameters.of(stage.envelope())
          .forEach(
              part ->
                  parts.add(
                      part.in("envelope.", own -> new Stage(stage.channel(), stage.drive(), own))));
    }
    ChannelParameters.of(stage.channel())
        .forEach(
            part ->
                parts.add(
                    part.in(
                        "channel.",
                        channel -> new Stage(channel, stage.drive(), stage.envelope()))));
    return parts;
  }

  private static List<Part<Drive>> ofDrive(Drive one) {
    return List.of(
        new Part<>(
            "gain",
            Range.of(Dimension.NUMBER, -2, 2),
            LINEAR,
            one.gain(),
            v -> new Drive(v, one.offsetVolts(), one.railVolts())),
        new Part<>(
            "offset",
            Range.of(Dimension.VOLTAGE, -20, 20),
            LINEAR,
            one.offsetVolts(),
            v -> new Drive(one.gain(), v, one.railVolts())),
        new Part<>(
            "controlRail",
            Range.of(Dimension.VOLTAGE, 0.1, 20),
            LOGARITHMIC,
            one.railVolts(),
            v -> new Drive(one.gain(), one.offsetVolts(), v)));
  }
}
