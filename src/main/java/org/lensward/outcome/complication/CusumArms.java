package org.lensward.outcome.complication;

/**
 * Both arms of the risk-adjusted cumulative sum. Each operation adds to the arm that watches for odds multiplied by R (Steiner, Cook,
 * Farewell and Treasure, Biostatistics 2000;1:441, with odds as foretold for the null):
 *
 * <pre>
 * W = ln(R / (1 - p + R p))    after a rupture
 * W = ln(1 / (1 - p + R p))    otherwise
 * </pre>
 *
 * The upper arm is max(0, arm + W) with R the odds to find, the lower min(0, arm - W) with their inverse.
 */
final class CusumArms {

    private final double odds;
    private double worse;
    private double better;

    CusumArms(double odds) {
        this.odds = odds;
    }

    static double weight(double odds, double chance, boolean rupture) {
        return Math.log((rupture ? odds : 1) / (1 - chance + odds * chance));
    }

    void next(double chance, boolean rupture) {
        worse = Math.max(0, worse + weight(odds, chance, rupture));
        better = Math.min(0, better - weight(1 / odds, chance, rupture));
    }

    double worse() {
        return worse;
    }

    double better() {
        return better;
    }

    void restartWorse() {
        worse = 0;
    }

    void restartBetter() {
        better = 0;
    }
}
