package org.lensward.outcome.vector;

import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.outcome.vector.VectorSummary.Ellipse;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/** Mean and covariance of vectors as they pass. */
final class VectorTally {

    private static final double CONFIDENCE = 0.95;

    private long eyes;
    private double meanX;
    private double meanY;
    private double xx;
    private double xy;
    private double yy;
    private double magnitudes;

    void add(Astigmatism vector) {
        eyes++;
        double x = vector.x().value() - meanX;
        double y = vector.y().value() - meanY;
        meanX += x / eyes;
        meanY += y / eyes;
        xx += x * (vector.x().value() - meanX);
        xy += x * (vector.y().value() - meanY);
        yy += y * (vector.y().value() - meanY);
        magnitudes += vector.magnitude().value();
    }

    void merge(VectorTally other) {
        if (other.eyes == 0) {
            return;
        }
        double both = (double) eyes + other.eyes;
        double x = other.meanX - meanX;
        double y = other.meanY - meanY;
        double weight = (double) eyes * other.eyes / both;
        xx += other.xx + x * x * weight;
        xy += other.xy + x * y * weight;
        yy += other.yy + y * y * weight;
        meanX += x * other.eyes / both;
        meanY += y * other.eyes / both;
        magnitudes += other.magnitudes;
        eyes += other.eyes;
    }

    /**
     * Ellipses of a bivariate normal from its sample, as squared Mahalanobis distances from the centroid: a further eye lies within
     * 2 (n + 1) (n - 1) / (n (n - 2)) F, the true centroid within 2 (n - 1) / (n (n - 2)) F, F the 95 % point with 2 and n - 2 degrees
     * of freedom (Hotelling, Ann Math Stat 1931;2:360; value from memory).
     */
    Optional<VectorSummary> summary() {
        if (eyes < 3) {
            return Optional.empty();
        }
        double n = eyes;
        double f = new FDistribution(null, 2, n - 2).inverseCumulativeProbability(CONFIDENCE);
        double ofCentroid = 2 * (n - 1) / (n * (n - 2)) * f;
        return Optional.of(new VectorSummary(
                eyes,
                new Astigmatism(Dioptres.of(meanX), Dioptres.of(meanY)),
                Dioptres.of(magnitudes / n),
                PureNumber.of(xx / (n - 1)),
                PureNumber.of(xy / (n - 1)),
                PureNumber.of(yy / (n - 1)),
                ellipse(ofCentroid * (n + 1)),
                ellipse(ofCentroid)));
    }

    /** The principal axes of the covariance in closed form. */
    private Ellipse ellipse(double squaredDistance) {
        double degrees = eyes - 1.0;
        double middle = (xx + yy) / 2 / degrees;
        double half = Math.hypot((xx - yy) / 2, xy) / degrees;
        double tilt = Math.toDegrees(Math.atan2(xy, (xx - yy) / 2)) / 2;
        return new Ellipse(
                Dioptres.of(Math.sqrt(squaredDistance * (middle + half))),
                Dioptres.of(Math.sqrt(squaredDistance * Math.max(0, middle - half))),
                Degrees.of(tilt < 0 ? tilt + 180 : tilt));
    }
}
