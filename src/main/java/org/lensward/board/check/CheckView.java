package org.lensward.board.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;

/**
 * Where one lens check stands, and what is to be asked next.
 *
 * @param key the booking's id
 * @param name the patient's, so that people see on whose check they are; what is compared is asked, not shown
 * @param eye {@code RIGHT EYE}
 * @param check id of the check, so that answers of an older one are not taken for this one's
 * @param state where it stands
 * @param steps the five checkpoints
 * @param questions of the next checkpoint; none where nothing can be asked
 * @param reason why it stopped or is refused, as the record has it
 */
record CheckView(
        String key,
        String name,
        String eye,
        String check,
        CheckState state,
        List<Stage> steps,
        List<Question> questions,
        String reason) {

    /**
     * A checkpoint.
     *
     * @param words as it is said
     * @param standing done, now or later
     */
    record Stage(String words, String standing) {}

    static List<Stage> stages(CheckState state) {
        Optional<Checkpoint> next = state.next();
        return Stream.of(Checkpoint.values())
                .map(each -> new Stage(
                        words(each),
                        next.filter(each::equals).isPresent() ? "now" : reached(each, state) ? "done" : "later"))
                .toList();
    }

    private static boolean reached(Checkpoint at, CheckState state) {
        return state == CheckState.COMPLETED
                || state.next().filter(next -> at.compareTo(next) < 0).isPresent();
    }

    static String words(Checkpoint at) {
        return switch (at) {
            case PICK -> "Pick";
            case SIGN_IN -> "Sign-in";
            case TIME_OUT -> "Time-out";
            case BEFORE_OPENING -> "Before opening";
            case SIGN_OUT -> "Sign-out";
        };
    }

    /** When and by whom, as a heading says it. */
    static String occasion(Checkpoint at) {
        return switch (at) {
            case PICK -> "Pick: the carton leaves the shelf";
            case SIGN_IN -> "Sign-in: before the anaesthetic";
            case TIME_OUT -> "Time-out: before the incision, read aloud";
            case BEFORE_OPENING -> "Before the seal is broken: two people read the box";
            case SIGN_OUT -> "Sign-out: what went in";
        };
    }

    public Optional<String> next() {
        return state.next().map(Checkpoint::code);
    }

    public String heading() {
        return state.next().map(CheckView::occasion).orElse("Lens check");
    }

    public boolean stopped() {
        return state == CheckState.FAILED;
    }

    /** Whether another lens than the planned one may have gone in. */
    public boolean mayDeviate() {
        return state == CheckState.FAILED
                || state.next().filter(next -> next != Checkpoint.PICK).isPresent();
    }

    @Override
    public String toString() {
        return "CheckView[" + key + ", " + state + "]";
    }
}
