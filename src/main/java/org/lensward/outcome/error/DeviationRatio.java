package org.lensward.outcome.error;

import java.util.List;
import org.apache.commons.math3.linear.RealVector;

/**
 * The logarithm of the ratio of two standard deviations, with its standard error by linearisation over blocks of patients.
 *
 * @param logarithm of first by second
 * @param error its standard error
 */
record DeviationRatio(double logarithm, double error) {

    /**
     * From blocks that hold the number of eyes, then of each formula the sum of errors and of their squares.
     *
     * @param one place of the first formula
     * @param two place of the second
     */
    static DeviationRatio of(List<RealVector> blocks, int one, int two) {
        Centred first = Centred.of(blocks, one);
        Centred second = Centred.of(blocks, two);
        double sum = 0;
        for (RealVector block : blocks) {
            double apart = first.share(block) - second.share(block);
            sum += apart * apart / 4;
        }
        double many = (double) blocks.size() / (blocks.size() - 1);
        return new DeviationRatio(Math.log(first.squares / second.squares) / 2, Math.sqrt(many * sum));
    }

    /** How many standard errors it lies from another; nought where nothing scatters. */
    double from(double other) {
        return error > 0 ? (logarithm - other) / error : 0;
    }

    private record Centred(int at, double mean, double squares) {

        static Centred of(List<RealVector> blocks, int formula) {
            int at = 1 + 2 * formula;
            double eyes = 0;
            double sum = 0;
            double squares = 0;
            for (RealVector block : blocks) {
                eyes += block.getEntry(0);
                sum += block.getEntry(at);
                squares += block.getEntry(at + 1);
            }
            double mean = sum / eyes;
            return new Centred(at, mean, squares - sum * mean);
        }

        /** The block's part in the squares about the mean. */
        double share(RealVector block) {
            double about = block.getEntry(at + 1) - 2 * mean * block.getEntry(at) + block.getEntry(0) * mean * mean;
            return about / squares;
        }
    }
}
