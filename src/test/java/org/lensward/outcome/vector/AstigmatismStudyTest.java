package org.lensward.outcome.vector;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.POLICY;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Laterality;
import org.lensward.lens.LensSite;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.outcome.Admission;
import org.lensward.outcome.ImplantedLens;
import org.lensward.outcome.Operated;
import org.lensward.outcome.Refraction;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** Mean, covariance and ellipses against Commons Math's covariance and eigenvalues. */
class AstigmatismStudyTest {

    private static final double SAME = 1e-9;

    private static Astigmatism vector(double x, double y) {
        return new Astigmatism(Dioptres.of(x), Dioptres.of(y));
    }

    @Provide
    Arbitrary<List<double[]>> vectors() {
        return Arbitraries.doubles()
                .between(-3, 3)
                .array(double[].class)
                .ofSize(2)
                .list()
                .ofMinSize(4)
                .ofMaxSize(60);
    }

    private static VectorTally tally(List<double[]> vectors) {
        VectorTally tally = new VectorTally();
        vectors.forEach(each -> tally.add(vector(each[0], each[1])));
        return tally;
    }

    @Property(tries = 200)
    void the_axes_are_those_of_the_covariance(@ForAll("vectors") List<double[]> vectors) {
        VectorSummary summary = tally(vectors).summary().orElseThrow();
        RealMatrix covariance = new Covariance(vectors.toArray(double[][]::new)).getCovarianceMatrix();
        assertThat(summary.varianceX().value()).isCloseTo(covariance.getEntry(0, 0), within(SAME));
        assertThat(summary.covariance().value()).isCloseTo(covariance.getEntry(0, 1), within(SAME));
        assertThat(summary.varianceY().value()).isCloseTo(covariance.getEntry(1, 1), within(SAME));
        EigenDecomposition axes = new EigenDecomposition(covariance);
        VectorSummary.Ellipse ellipse = summary.ofEyes();
        double squared =
                Math.pow(ellipse.major().value(), 2) + Math.pow(ellipse.minor().value(), 2);
        double product = ellipse.major().value() * ellipse.minor().value();
        double scale = squared / (axes.getRealEigenvalue(0) + axes.getRealEigenvalue(1));
        assertThat(product).isCloseTo(scale * Math.sqrt(Math.max(0, axes.getDeterminant())), within(1e-6));
        double tilt = Math.toRadians(ellipse.tilt().value());
        RealMatrix along = MatrixUtils.createColumnRealMatrix(new double[] {Math.cos(tilt), Math.sin(tilt)});
        double variance = along.transpose().multiply(covariance).multiply(along).getEntry(0, 0);
        assertThat(variance).isCloseTo(Math.max(axes.getRealEigenvalue(0), axes.getRealEigenvalue(1)), within(1e-6));
        assertThat(ellipse.major().value() / summary.ofCentroid().major().value())
                .isCloseTo(Math.sqrt(vectors.size() + 1.0), within(1e-6));
    }

    @Property(tries = 200)
    void merge_order_does_not_matter(@ForAll("vectors") List<double[]> one, @ForAll("vectors") List<double[]> two) {
        VectorTally forward = tally(one);
        forward.merge(tally(two));
        VectorTally backward = tally(two);
        backward.merge(tally(one));
        backward.merge(new VectorTally());
        VectorSummary a = forward.summary().orElseThrow();
        VectorSummary b = backward.summary().orElseThrow();
        assertThat(a.covariance().value()).isCloseTo(b.covariance().value(), within(SAME));
        assertThat(a.centroid().x().value()).isCloseTo(b.centroid().x().value(), within(SAME));
        assertThat(a.meanMagnitude().value()).isCloseTo(b.meanMagnitude().value(), within(SAME));
    }

    /** Of 4,000 further eyes of the same normal scatter 95 % fall inside, give or take four standard errors of both samples. */
    @Test
    void further_eyes_fall_inside_as_often_as_promised() {
        Well19937c random = new Well19937c(3);
        VectorTally tally = new VectorTally();
        for (int each = 0; each < 2000; each++) {
            tally.add(drawn(random));
        }
        VectorSummary summary = tally.summary().orElseThrow();
        int inside = 0;
        for (int each = 0; each < 4000; each++) {
            inside += inside(summary, drawn(random)) ? 1 : 0;
        }
        assertThat(inside / 4000.0).isBetween(0.93, 0.97);
    }

    private static boolean inside(VectorSummary summary, Astigmatism vector) {
        Astigmatism off = vector.minus(summary.centroid());
        double tilt = Math.toRadians(summary.ofEyes().tilt().value());
        double along = off.x().value() * Math.cos(tilt) + off.y().value() * Math.sin(tilt);
        double across = -off.x().value() * Math.sin(tilt) + off.y().value() * Math.cos(tilt);
        return Math.hypot(
                        along / summary.ofEyes().major().value(),
                        across / summary.ofEyes().minor().value())
                <= 1;
    }

    private static Astigmatism drawn(Well19937c random) {
        double shared = random.nextGaussian();
        return vector(0.2 + 0.5 * shared, -0.1 + 0.3 * shared + 0.2 * random.nextGaussian());
    }

    @Test
    void two_eyes_have_no_ellipse() {
        assertThat(tally(List.of(new double[] {1, 0}, new double[] {0, 1})).summary())
                .isEmpty();
    }

    /** A residual of 0.50 D at 90 expected, 1.00 D at 90 found: 0.50 D too much along 90 degrees, that is x = -0.5. */
    @Test
    void toric_lenses_are_held_against_what_was_expected() {
        AstigmatismStudy study = new AstigmatismStudy();
        AstigmatismStudy other = new AstigmatismStudy();
        Admission admission = new Admission(POLICY);
        for (int each = 0; each < 6; each++) {
            Operated eye = Operated.ordinary()
                    .keys("p" + each, "o")
                    .with(Operated.written(
                            Laterality.RIGHT,
                            28,
                            0,
                            Optional.of(Operated.cylinder(1, Refraction.Form.MINUS, 90)),
                            Optional.of(12.0),
                            1))
                    .expecting(Astigmatism.of(Dioptres.of(0.5), Degrees.of(90)))
                    .lens(each < 4 ? toric() : Operated.ordinary().lens());
            (each % 2 == 0 ? study : other).add(admission.admit(eye.eye()));
        }
        study.add(admission.admit(Operated.ordinary()
                .keys("q", "o")
                .site(Optional.of(LensSite.SULCUS))
                .eye()));
        assertThat(study.toricErrors()).isEmpty();
        study.merge(other);
        VectorSummary after = study.after().orElseThrow();
        assertThat(after.eyes()).isEqualTo(6);
        assertThat(after.centroid().x().value()).isCloseTo(-1, within(SAME));
        VectorSummary errors = study.toricErrors().orElseThrow();
        assertThat(errors.eyes()).isEqualTo(4);
        assertThat(errors.centroid().x().value()).isCloseTo(-0.5, within(SAME));
        assertThat(errors.centroid().y().value()).isCloseTo(0, within(SAME));
    }

    private static ImplantedLens toric() {
        return new ImplantedLens(
                "toric",
                Dioptres.of(21),
                Optional.of(new ImplantedLens.Toric(Dioptres.of(2), Optional.of(Degrees.of(90)))),
                Optional.of(LensSite.CAPSULAR_BAG));
    }
}
