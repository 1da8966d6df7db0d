package org.lensward.outcome.vector;

import java.util.Optional;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;

/**
 * Refractive astigmatism after surgery, of all eyes that count, and how far it ended from what the toric plan expected, of toric lenses.
 * Eyes without an axis are left out.
 */
public final class AstigmatismStudy implements EyeTally<AstigmatismStudy> {

    private final VectorTally after = new VectorTally();
    private final VectorTally toricErrors = new VectorTally();

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Counted eye) {
            eye.refraction().astigmatism().ifPresent(found -> {
                after.add(found);
                expected(eye).ifPresent(residual -> toricErrors.add(found.minus(residual)));
            });
        }
    }

    private static Optional<Astigmatism> expected(Admitted.Counted eye) {
        return eye.eye().lens().isToric() ? eye.eye().before().residual() : Optional.empty();
    }

    @Override
    public void merge(AstigmatismStudy other) {
        after.merge(other.after);
        toricErrors.merge(other.toricErrors);
    }

    /** Of all eyes that count; empty for fewer than three. */
    public Optional<VectorSummary> after() {
        return after.summary();
    }

    /** Achieved minus expected, of toric lenses; empty for fewer than three. */
    public Optional<VectorSummary> toricErrors() {
        return toricErrors.summary();
    }
}
