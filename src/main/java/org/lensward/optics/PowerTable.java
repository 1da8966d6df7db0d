package org.lensward.optics;

import java.util.List;
import org.lensward.quantity.Dioptres;

/**
 * Labelled powers with the refraction that each formula predicts.
 *
 * @param rows in the order of the powers given
 */
public record PowerTable(List<Row> rows) {

    public PowerTable {
        rows = List.copyOf(rows);
    }

    /**
     * One labelled power.
     *
     * @param power on the label
     * @param predictions one for each formula, in the formulas' order
     */
    public record Row(Dioptres power, List<Prediction> predictions) {

        public Row {
            predictions = List.copyOf(predictions);
        }

        /** How far the formulas lie apart for this lens; nought for one formula or none. */
        public Dioptres disagreement() {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Prediction prediction : predictions) {
                least = Math.min(least, prediction.refraction().value());
                most = Math.max(most, prediction.refraction().value());
            }
            return Dioptres.of(Math.max(0, most - least));
        }
    }

    /** The table of these powers for one eye as several formulas see it. */
    public static PowerTable of(List<Dioptres> powers, List<SeenEye> eyes) {
        return new PowerTable(powers.stream().map(power -> row(power, eyes)).toList());
    }

    private static Row row(Dioptres power, List<SeenEye> eyes) {
        return new Row(
                power,
                eyes.stream()
                        .map(seen -> new Prediction(seen.formula(), seen.eye().refraction(power)))
                        .toList());
    }

    /**
     * Only the rows next to a choice.
     *
     * @param choice a power of the table
     * @param neighbours how many rows to keep on either side
     */
    public PowerTable around(Dioptres choice, int neighbours) {
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i).power().equals(choice)) {
                return new PowerTable(
                        rows.subList(Math.max(0, i - neighbours), Math.min(rows.size(), i + neighbours + 1)));
            }
        }
        throw new IllegalArgumentException("The table does not hold " + choice);
    }
}
