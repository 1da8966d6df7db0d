package org.lensward.optics;

import org.apache.commons.math3.util.FastMath;
import org.apache.commons.math3.util.MathArrays;

/** Every formula in its printed form. Sources at each. */
enum OriginalForms implements OriginalForm {
    /** Retzlaff, Sanders and Kraff, J Cataract Refract Surg 1990;16:333-340, appendix. */
    RETZLAFF_1990(FormulaName.SRK_T) {
        @Override
        public double power(Given eye, double refraction) {
            return RationalForms.srkT(eye).power(refraction);
        }
    },

    /** Sheard, Smith and Cooke, J Cataract Refract Surg 2010;36:1829-1834. */
    SHEARD_2010(FormulaName.T2) {
        @Override
        public double power(Given eye, double refraction) {
            return RationalForms.t2(eye).power(refraction);
        }
    },

    /** Holladay et al., J Cataract Refract Surg 1988;14:17-24, appendix. */
    HOLLADAY_1988(FormulaName.HOLLADAY_1) {
        @Override
        public double power(Given eye, double refraction) {
            return RationalForms.holladay1(eye).power(refraction);
        }
    },

    /** Hoffer, J Cataract Refract Surg 1993;19:700-712, with its errata: distances in metres, tan^2 by the cosine. */
    HOFFER_1993(FormulaName.HOFFER_Q) {
        @Override
        public double power(Given eye, double refraction) {
            double held = FastMath.min(31, FastMath.max(18.5, eye.length()));
            double bend = held > 23
                    ? -FastMath.tan(FastMath.toRadians(FastMath.pow(held - 23.5, 2) / 10))
                    : FastMath.tan(FastMath.toRadians(FastMath.pow(28 - held, 2) / 10));
            double chamber = Given.PERSONALISED_ACD
                    + 0.3 * (held - 23.5)
                    + FastMath.pow(FastMath.cos(FastMath.toRadians(eye.k())), -2)
                    - 1
                    + FastMath.pow(held - 23.5, 2) / 10 * bend
                    - 0.99166;
            double atCornea = eye.k() + 1 / (1 / refraction - 0.012);
            return 1.336 / ((eye.length() - chamber - 0.05) / 1000)
                    - 1.336 / (1.336 / atCornea - (chamber + 0.05) / 1000);
        }
    },

    /** Haigis et al., Graefe's Arch 2000;238:765-773, as its image distance q: P = n (q - L) / ((L - d)(q - d)). */
    HAIGIS_2000(FormulaName.HAIGIS) {
        @Override
        public double power(Given eye, double refraction) {
            double position =
                    MathArrays.linearCombination(Given.HAIGIS, new double[] {1, eye.chamberDepth(), eye.length()});
            double q = 1336 / (331.5 / eye.radius() + refraction / (1 - refraction * 0.012));
            return 1336 * (q - eye.length()) / ((eye.length() - position) * (q - position));
        }
    };

    private final FormulaName name;

    OriginalForms(FormulaName name) {
        this.name = name;
    }

    @Override
    public FormulaName formula() {
        return name;
    }
}
