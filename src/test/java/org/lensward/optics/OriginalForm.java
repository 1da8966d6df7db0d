package org.lensward.optics;

/** A formula again, written as its authors printed it rather than as vergences; plain numbers in mm and D. */
interface OriginalForm {

    FormulaName formula();

    /**
     * @param eye what was measured
     * @param refraction wanted at the spectacle plane, 12 mm
     */
    double power(Given eye, double refraction);

    /**
     * The eye and the lens constants of {@link Eyes#CONSTANTS}.
     *
     * @param length axial length
     * @param k keratometric power, 337.5 / r
     * @param chamberDepth from the epithelium
     */
    record Given(double length, double k, double chamberDepth) {

        static final double A = 118.4;
        static final double SURGEON_FACTOR = 1.45;
        static final double PERSONALISED_ACD = 5.20;
        static final double[] HAIGIS = {1.30, 0.4, 0.1};

        double radius() {
            return 337.5 / k;
        }

        EyeShape shape() {
            return Eyes.shape(length, k, chamberDepth);
        }
    }
}
