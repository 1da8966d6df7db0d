package org.lensward.outcome.error;

import java.util.List;
import java.util.Optional;
import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * What others reached, to compare with.
 *
 * @param name short
 * @param limit the distance from the prediction
 * @param share of eyes within it
 * @param series of how many eyes that was counted; absent for a standard that was set
 * @param source citation
 */
public record PublishedResult(String name, Dioptres limit, Probability share, Optional<Series> series, String source) {

    /** What was counted. */
    public record Series(long within, long eyes) {}

    /** How a unit stands to it. */
    public enum Standing {
        BETTER,
        NOT_TOLD_APART,
        WORSE
    }

    /**
     * A comparison.
     *
     * @param published with what
     * @param own the unit's own share
     * @param difference own minus published share, with its interval; nought inside it tells nothing apart
     * @param standing what that means
     */
    public record Compared(PublishedResult published, Within own, Interval<PureNumber> difference, Standing standing) {}

    private static final String GALE = "Gale et al., Eye 2009;23:149-152 (abstract read)";
    private static final String EUREQUO =
            "Lundström et al., J Cataract Refract Surg 2018;44:447 (abstract read; 282,811 eyes of 100 clinics)";

    /** The standards and the registry that audits are held against. */
    public static List<PublishedResult> all() {
        return List.of(
                standard(1.0, 0.85),
                standard(0.5, 0.55),
                registry(1.0, new Series(263_015, 282_811)),
                registry(0.5, new Series(205_675, 282_811)));
    }

    private static PublishedResult standard(double limit, double share) {
        return new PublishedResult(
                "NHS standard 2009", Dioptres.of(limit), Probability.of(share), Optional.empty(), GALE);
    }

    private static PublishedResult registry(double limit, Series series) {
        Probability share = Probability.of((double) series.within() / series.eyes());
        return new PublishedResult(
                "European registry 2014-15", Dioptres.of(limit), share, Optional.of(series), EUREQUO);
    }

    /**
     * How a unit stands to this. Against a standard: the exact interval of its own share; against a series: the interval of the
     * difference of two shares by their scores (Newcombe, Stat Med 1998;17:873, method 10; value from memory).
     *
     * @param own share within the same limit
     */
    public Compared compare(Within own) {
        if (own.limit().compareTo(limit) != 0) {
            throw new IllegalArgumentException("Within " + own.limit() + " against within " + limit);
        }
        Interval<PureNumber> difference =
                series.map(counted -> betweenScores(own, counted)).orElseGet(() -> fromStandard(own));
        return new Compared(this, own, difference, standing(difference));
    }

    private Interval<PureNumber> fromStandard(Within own) {
        return interval(
                own.interval().low().value() - share.value(),
                own.interval().high().value() - share.value(),
                own);
    }

    private Interval<PureNumber> betweenScores(Within own, Series counted) {
        Probability confidence = own.interval().confidence();
        Interval<Probability> ours = Intervals.score(own.eyes(), own.of(), confidence);
        Interval<Probability> theirs = Intervals.score(counted.within(), counted.eyes(), confidence);
        double p = own.share().value();
        double q = share.value();
        double below = Math.hypot(p - ours.low().value(), theirs.high().value() - q);
        double above = Math.hypot(ours.high().value() - p, q - theirs.low().value());
        return interval(p - q - below, p - q + above, own);
    }

    private static Interval<PureNumber> interval(double low, double high, Within own) {
        return new Interval<>(
                PureNumber.of(low), PureNumber.of(high), own.interval().confidence());
    }

    private static Standing standing(Interval<PureNumber> difference) {
        if (difference.low().value() > 0) {
            return Standing.BETTER;
        }
        return difference.high().value() < 0 ? Standing.WORSE : Standing.NOT_TOLD_APART;
    }
}
