package org.lensward.risk.opening;

import java.util.List;

/** Which technique leaves the stronger edge: papers contradict each other, so no plan ranks techniques by it. */
public final class EdgeStrength {

    /** What is said of every choice between techniques. */
    public static final String CAVEAT =
            "Edge strength did not enter this choice. Practitioners rank coagulated edges above"
                    + " torn ones and torn ones above photodisrupted ones (common practice, no source);"
                    + " published measurements conflict.";

    private EdgeStrength() {}

    /** Published measurements, force at which the edge tore, mean and standard deviation. Each was read as an abstract. */
    public static List<String> published() {
        return List.of(
                "Patzlaff-Guenther et al., Lasers Med Sci (porcine):"
                        + " torn 150 +- 70 mN, photodisrupted 60 +- 20 and 30 +- 20 mN",
                "Auffarth et al., J Cataract Refract Surg 2013;39:105 (porcine):"
                        + " photodisrupted 113 +- 12 mN, torn 73 +- 22 mN",
                "Thompson et al., Ophthalmology 2016;123:265 (paired human eyes):"
                        + " torn 21.3 +- 4.9 mN, photodisrupted 24.5 +- 11.4 mN, no difference;"
                        + " thermal 73.3 +- 24.9 mN against photodisrupted 26.1 +- 6.8 mN,"
                        + " and 95 +- 35.2 mN against torn 29.1 +- 23.1 mN",
                "Reyes Lua et al., Invest Ophthalmol Vis Sci 2016;57:2839: the torn rim was the more stable");
    }
}
