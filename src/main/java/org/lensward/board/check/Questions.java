package org.lensward.board.check;

import static org.lensward.board.check.Question.Kind.CARTON;
import static org.lensward.board.check.Question.Kind.DATE;
import static org.lensward.board.check.Question.Kind.EACH;
import static org.lensward.board.check.Question.Kind.NUMBER;
import static org.lensward.board.check.Question.Kind.ONE;
import static org.lensward.board.check.Question.Kind.TEXT;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.lensward.board.check.Question.Option;
import org.lensward.check.BackUp;
import org.lensward.check.CheckPolicy;
import org.lensward.check.Checkpoint;
import org.lensward.check.Comparison;
import org.lensward.check.Expected;
import org.lensward.check.Identity;
import org.lensward.check.PackageState;
import org.lensward.eye.Laterality;

/** What has to be asked at a checkpoint, in the order of the hands: patient, eye, sheet, carton, room. Nothing of what is expected is shown. */
final class Questions {

    private static final List<Option> EYES =
            List.of(new Option(Laterality.RIGHT.toString(), "RIGHT"), new Option(Laterality.LEFT.toString(), "LEFT"));

    private final Checkpoint at;
    private final Expected expected;
    private final CheckPolicy policy;
    private final Naming naming;
    private final List<Question> all = new ArrayList<>();

    private Questions(Checkpoint at, Expected expected, CheckPolicy policy, Naming naming) {
        this.at = at;
        this.expected = expected;
        this.policy = policy;
        this.naming = naming;
    }

    /**
     * What things are called.
     *
     * @param numbers what an identifier's system is called
     * @param models every lens model's name by its reference
     * @param surgeon who confirmed the plan
     */
    record Naming(Map<String, String> numbers, Map<String, String> models, String surgeon) {}

    static List<Question> of(Checkpoint at, Expected expected, CheckPolicy policy, Naming naming) {
        Questions asked = new Questions(at, expected, policy, naming);
        asked.patient();
        asked.eyes();
        asked.sheet();
        asked.carton();
        asked.room();
        return List.copyOf(asked.all);
    }

    /** The identifiers that are asked for, in a lasting order. */
    static List<Identity.Number> numbers(Expected expected) {
        return expected.patient().numbers().stream()
                .sorted(Comparator.comparing(Identity.Number::system).thenComparing(Identity.Number::value))
                .limit(2)
                .toList();
    }

    private void patient() {
        String where = at.asks(Comparison.MARK) ? "Scan it from the wristband, or type it." : "Read it from the list.";
        int index = 0;
        for (Identity.Number each : numbers(expected)) {
            String name = naming.numbers().getOrDefault(each.system(), "number");
            all.add(Question.typed("number-" + index++, TEXT, "Who is it? The " + name + ".", where));
        }
        all.add(Question.typed(
                "born",
                DATE,
                "The date of birth?",
                at.asks(Comparison.MARK)
                        ? "Ask the patient; do not read it out. Day, month, year."
                        : "Read it from the list. Day, month, year."));
    }

    private void eyes() {
        eye("eye-booking", "Which eye does the consent say?");
        eye("eye-sheet", "Which eye does the plan's sheet say?");
        eye("eye-biometry", "Which eye does the biometry say?");
        if (at.asks(Comparison.MARK)) {
            eye("eye-mark", "Which eye is marked on the skin?");
        }
    }

    private void eye(String id, String ask) {
        all.add(Question.pressed(id, ONE, ask, "Look there, then press.", EYES));
    }

    private void sheet() {
        all.add(Question.typed(
                "plan",
                TEXT,
                "The plan's code?",
                "It stands on the sheet, twelve letters and digits. Scan or type it."));
        if (expected.axis().isPresent()) {
            all.add(Question.typed("axis", NUMBER, "The axis?", "Read it from the sheet, in degrees."));
        }
    }

    private void carton() {
        all.add(Question.typed("scan", CARTON, "Scan the carton.", "Every barcode on it, one after the other."));
        List<Option> states = new ArrayList<>(List.of(
                new Option(PackageState.INTACT.toString(), "WHOLE: seal unbroken"),
                new Option(PackageState.DAMAGED.toString(), "DAMAGED or in doubt")));
        if (at.packageState() == PackageState.OPENED) {
            states.add(0, new Option(PackageState.OPENED.toString(), "OPENED for this patient"));
        }
        all.add(Question.pressed("package", ONE, "How is the package?", "Look at every side.", states));
        if (readsTheBox()) {
            all.add(Question.pressed(
                    "model",
                    ONE,
                    "Second person: which lens is written on the box?",
                    "Read it aloud from the box, then press.",
                    naming.models().entrySet().stream()
                            .map(each -> new Option(each.getKey(), each.getValue()))
                            .toList()));
            all.add(Question.typed(
                    "power", NUMBER, "Second person: which power?", "Read it aloud from the box, with its sign."));
            if (expected.lens().cylinder().isPresent()) {
                all.add(Question.typed("cylinder", NUMBER, "Second person: which cylinder?", "Read it from the box."));
            }
        }
    }

    private boolean readsTheBox() {
        return policy.readTheBox().contains(at);
    }

    private void room() {
        List<Option> allergies = new ArrayList<>();
        expected.allergies().stream().sorted().forEach(each -> allergies.add(new Option(each, each)));
        all.add(Question.pressed(
                "allergies",
                EACH,
                "Any allergies?",
                "Ask the patient. Press each that is named, and type any other; with none, go on.",
                allergies));
        if (at.asks(Comparison.BACK_UPS) && !expected.backUps().isEmpty()) {
            all.add(Question.pressed(
                    "back-ups",
                    EACH,
                    "Which back-up lenses stand by?",
                    "Press each that you have seen.",
                    expected.backUps().stream().map(this::backUp).toList()));
        }
        if (readsTheBox() || policy.twoPeople().contains(at)) {
            all.add(Question.typed("second", TEXT, "Who is the second person?", "Scan the badge, or type the name."));
        }
        if (at == Checkpoint.SIGN_OUT) {
            all.add(Question.typed("surgeon", TEXT, "Who implanted the lens?", "The surgeon's name.")
                    .preset(naming.surgeon()));
        }
    }

    private Option backUp(BackUp needed) {
        String model = naming.models()
                .getOrDefault(needed.lens().model(), needed.lens().model());
        return new Option(
                needed.role().code(),
                needed.role().code().replace('-', ' ') + ": " + model + " "
                        + needed.lens().power().signed());
    }
}
