package org.lensward.board.bank;

import java.util.List;
import java.util.Optional;

/**
 * Stock by model and power: one row for each model, one cell for each power step.
 *
 * @param powers the steps, ascending, as the head shows them
 * @param rows in order of name
 * @param sites at which cartons lie, for choosing
 */
record HeatStrip(List<String> powers, List<Row> rows, List<Names.Choice> sites) {

    private static final int MODEL = 184;
    private static final int STEP = 30;

    /** The least width of the whole, in pixels: every step as wide as every other. */
    public int width() {
        return MODEL + STEP * powers.size();
    }

    /**
     * One model; a toric one for each cylinder.
     *
     * @param model its name
     * @param cylinder such as "cylinder 1.50 D"
     * @param free cartons free and in date, of all powers
     * @param below how many powers are below par
     * @param cells one for each step; empty where the model has neither cartons nor use in it
     */
    record Row(String model, Optional<String> cylinder, int free, int below, List<Optional<Cell>> cells) {}

    /**
     * One kind of lens.
     *
     * @param id of the cell on the page
     * @param address of the page with its cartons
     * @param count free and in date
     * @param reserved promised to a booking or in theatre for it
     * @param expiring on the shelf and soon out of date, or already
     * @param quarantined kept apart
     * @param par what there ought to be, over the sites shown
     * @param isBelow whether free and on order come to less at any site
     */
    record Cell(
            String id,
            String address,
            String power,
            int count,
            int reserved,
            int expiring,
            int quarantined,
            int par,
            boolean isBelow) {

        /** How dark: 0 for none, then 1, 2 or 3, 4 to 7, more. */
        public int shade() {
            return count == 0 ? 0 : count == 1 ? 1 : count < 4 ? 2 : count < 8 ? 3 : 4;
        }

        /** All of it, to be read aloud. */
        public String words() {
            return power + ": " + count + " free"
                    + said(reserved, "reserved")
                    + said(expiring, "going out of date")
                    + said(quarantined, "in quarantine")
                    + (isBelow ? ", below par of " + par : "");
        }

        private static String said(int count, String what) {
            return count == 0 ? "" : ", " + count + " " + what;
        }
    }
}
