package org.lensward.risk.preparation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Quantity;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** A precaution in the making: reasons and evidence gathered together, silence kept as a question. */
final class Draft {

    private final Topic topic;
    private final Set<String> reasons = new LinkedHashSet<>();
    private final Set<String> unknown = new LinkedHashSet<>();
    private final Set<Evidence> evidence = new LinkedHashSet<>();
    private final List<Bring> bring = new ArrayList<>();

    Draft(Topic topic) {
        this.topic = topic;
    }

    Draft because(String reason, Evidence where) {
        reasons.add(reason);
        evidence.add(where);
        return this;
    }

    Draft because(Entry entry) {
        return because(entry.words(), entry.evidence());
    }

    Draft ask(String question) {
        unknown.add(question);
        return this;
    }

    /** Each sign present is a reason, each unmentioned one a question. */
    Draft signs(Facts facts, Collection<Sign> signs) {
        facts.affirmed(signs).forEach(this::because);
        facts.unknown(signs).forEach(sign -> ask(Question.about(sign)));
        return this;
    }

    <Q extends Quantity & Comparable<Q>> Draft above(String what, Optional<Measured<Q>> measured, Limit<Q> most) {
        return beyond(what, measured, most, 1);
    }

    <Q extends Quantity & Comparable<Q>> Draft below(String what, Optional<Measured<Q>> measured, Limit<Q> least) {
        return beyond(what, measured, least, -1);
    }

    private <Q extends Quantity & Comparable<Q>> Draft beyond(
            String what, Optional<Measured<Q>> measured, Limit<Q> limit, int way) {
        if (measured.isEmpty()) {
            return ask(what);
        }
        Q value = measured.get().value();
        if (Integer.signum(value.compareTo(limit.value())) == way) {
            because(
                    what + " " + Figures.of(value) + (way > 0 ? " above " : " below ") + Figures.of(limit.value()),
                    measured.get().evidence());
        }
        return this;
    }

    boolean hasReasons() {
        return !reasons.isEmpty();
    }

    String reasonWords() {
        return String.join(", ", reasons);
    }

    /** One of these, any make. */
    Draft bring(TheatreItem item) {
        return bring(new Bring(item, 1, "", Set.of(), reasonWords()));
    }

    Draft bring(Bring thing) {
        bring.add(thing);
        return this;
    }

    /** The precaution; without a reason it is to find out what is unknown, and without a question there is none. */
    Optional<Precaution> settle(String action, String source) {
        if (hasReasons()) {
            return Optional.of(precaution(action, source));
        }
        return unknown.isEmpty()
                ? Optional.empty()
                : Optional.of(precaution("Find out: " + String.join("; ", unknown) + ".", source));
    }

    private Precaution precaution(String action, String source) {
        return new Precaution(
                topic,
                action,
                List.copyOf(reasons),
                List.copyOf(unknown),
                List.copyOf(evidence),
                source,
                hasReasons() ? bring : List.of());
    }
}
