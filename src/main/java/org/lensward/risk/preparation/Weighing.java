package org.lensward.risk.preparation;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Quantity;

/** A judgement in the making. What forbids outweighs what is unknown, and that what is merely doubtful. */
final class Weighing {

    private final Set<String> against = new LinkedHashSet<>();
    private final Set<String> doubts = new LinkedHashSet<>();
    private final Set<String> unknown = new LinkedHashSet<>();
    private final Set<Evidence> evidence = new LinkedHashSet<>();

    Weighing forbid(String reason, Evidence where) {
        against.add(reason);
        evidence.add(where);
        return this;
    }

    Weighing doubt(String reason, Evidence where) {
        doubts.add(reason);
        evidence.add(where);
        return this;
    }

    Weighing ask(String question) {
        unknown.add(question);
        return this;
    }

    Weighing forbid(Facts facts, Collection<Sign> signs) {
        facts.affirmed(signs).forEach(entry -> forbid(entry.words(), entry.evidence()));
        facts.unknown(signs).forEach(sign -> ask(Question.about(sign)));
        return this;
    }

    Weighing doubt(Facts facts, Collection<Sign> signs) {
        facts.affirmed(signs).forEach(entry -> doubt(entry.words(), entry.evidence()));
        facts.unknown(signs).forEach(sign -> ask(Question.about(sign)));
        return this;
    }

    /** Less than the limit forbids it; an absent figure is a question. */
    <Q extends Quantity & Comparable<Q>> Weighing below(String what, Optional<Measured<Q>> measured, Limit<Q> least) {
        if (measured.isEmpty()) {
            return ask(what + ", at least " + Figures.of(least.value()));
        }
        Q value = measured.get().value();
        return value.compareTo(least.value()) < 0
                ? forbid(
                        what + " " + Figures.of(value) + " below " + Figures.of(least.value()),
                        measured.get().evidence())
                : this;
    }

    Judgement judgement() {
        Set<String> reasons = new LinkedHashSet<>(against);
        reasons.addAll(doubts);
        return new Judgement(verdict(), List.copyOf(reasons), List.copyOf(unknown), List.copyOf(evidence));
    }

    private Verdict verdict() {
        if (!against.isEmpty()) {
            return Verdict.DOES_NOT_SUIT;
        }
        if (!unknown.isEmpty()) {
            return Verdict.UNKNOWN;
        }
        return doubts.isEmpty() ? Verdict.SUITS : Verdict.DOUBTFUL;
    }
}
