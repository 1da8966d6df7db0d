package org.lensward.outcome.constant;

/**
 * Lens positions at which errors are summed, so that sums at any position between follow by interpolation: eight Chebyshev points within
 * 1 mm of the position in use.
 *
 * <p>The prediction of a thin eye is an analytic function of the lens position, whose nearest singularity lies about an eye's length
 * away; the polynomial through eight such points misses it by less than 1e-9 D (Trefethen, Approximation Theory and Approximation
 * Practice, 2013, theorem 8.2). Sums over many eyes are as smooth, so that one pass holds all that a fit needs.
 */
final class PositionNodes {

    static final int COUNT = 8;

    /** The furthest a fitted lens position may lie from the one in use, in mm: 1.6 units of A. */
    static final double REACH = 1;

    private static final double[] NODES = new double[COUNT];
    private static final double[] WEIGHTS = new double[COUNT];

    static {
        for (int each = 0; each < COUNT; each++) {
            double angle = (2 * each + 1) * Math.PI / (2 * COUNT);
            NODES[each] = REACH * Math.cos(angle);
            WEIGHTS[each] = (each % 2 == 0 ? 1 : -1) * Math.sin(angle);
        }
    }

    private PositionNodes() {}

    static double node(int index) {
        return NODES[index];
    }

    /** The polynomial through the values at the nodes (Berrut and Trefethen, SIAM Rev 2004;46:501, formula 5.4). */
    static double at(double position, double[] values) {
        double above = 0;
        double below = 0;
        for (int each = 0; each < COUNT; each++) {
            double apart = position - NODES[each];
            if (apart == 0) {
                return values[each];
            }
            double part = WEIGHTS[each] / apart;
            above += part * values[each];
            below += part;
        }
        return above / below;
    }
}
