package org.varwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.plot.Width;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushJson;
import org.varwright.switching.InrushPicture;
import org.varwright.switching.InrushRequest;
import org.varwright.switching.InrushRequestReader;
import org.varwright.switching.InrushText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code inrush BANK}. */
@Command(
        name = "inrush",
        description = {
            "Inrush current of every stage, alone and beside all others, by formula and simulated at the worst closing angles;"
                    + " held against switches, fuses and reactors.",
            "Exit 1 where a limit is broken, 3 where something asked for could not be computed."
        })
final class InrushCommand extends BankCommand {
    @Option(names = "--stage", paramLabel = "STAGE", description = "The one stage that is switched.")
    private @Nullable String stage;

    @Option(
            names = "--onto",
            paramLabel = "STAGE",
            split = ",",
            description = "Stages that are on already, with commas between them, or \"none\".")
    private List<String> onto = new ArrayList<>();

    @Option(
            names = "--trapped",
            paramLabel = "LEG=TIMES",
            description = "Charge left on the legs of that stage, in multiples of the peak voltage in service, such as"
                    + " A=1.0,B=-0.5,C=-0.5; a leg not named holds none.")
    private @Nullable String trapped;

    @Option(
            names = "--angles",
            paramLabel = "POLE=DEGREES",
            description = "When the poles close, such as A=90,B=95,C=100: 0 where the voltage of phase A rises through"
                    + " zero, 90 at its peak. Otherwise the worst is searched.")
    private @Nullable String angles;

    @Option(names = "--opening", description = "Open the stage instead: what its poles and legs bear and keep.")
    private boolean opening;

    @Option(
            names = "--restrike",
            paramLabel = "POLE=TIMES",
            description =
                    "Open the stage; this pole conducts again when the voltage across it reaches so many times the"
                            + " peak line to neutral, such as A=2.0.")
    private @Nullable String restrike;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        InrushRequest request = new InrushRequestReader(bank)
                .read(
                        Optional.ofNullable(stage),
                        onto,
                        Optional.ofNullable(trapped),
                        Optional.ofNullable(angles),
                        opening,
                        Optional.ofNullable(restrike));
        Inrush inrush = Inrush.of(bank, request);
        picture.write(width -> drawn(inrush, width));
        String text = InrushText.of(inrush) + (explain() ? BasisText.of(inrush.bases()) : "");
        return new Answer(
                text,
                InrushJson.of(inrush),
                switch (inrush.answer()) {
                    case GOOD -> ExitCode.DONE;
                    case BAD -> ExitCode.NO;
                    case UNANSWERED -> ExitCode.UNDECIDED;
                });
    }

    /** The hardest closing of those that were asked for. */
    private static String drawn(Inrush inrush, Width width) {
        return InrushPicture.hardest(inrush)
                .flatMap(hardest -> InrushPicture.svg(inrush, hardest, width))
                .orElseThrow(() -> new VarwrightException(
                        Message.NOTHING_TO_DRAW,
                        new Place("", 0, 0, "-o"),
                        "no closing could be simulated, or none was asked for"));
    }
}
