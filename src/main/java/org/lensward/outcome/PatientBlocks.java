package org.lensward.outcome;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * Sums kept apart in a fixed number of blocks, so that a stream can be bootstrapped: whole blocks are drawn with replacement. A block
 * holds whole patients, so that two eyes of one person are drawn together (the cluster bootstrap: Davison and Hinkley, Bootstrap
 * Methods and their Application, 1997; value from memory). With fewer patients than blocks this is nearly the ordinary bootstrap.
 */
public final class PatientBlocks {

    /** With 128, a standard error is itself sure to about 6 %, which is 1 / sqrt(2 x 128). */
    private static final int BLOCKS = 128;

    /** A golden section of 2^32: spreads keys that differ in their last letter alone. */
    private static final int SPREAD = 0x9E3779B9;

    private static final ArrayRealVector EMPTY = new ArrayRealVector(0);

    private final int width;
    private final List<ArrayRealVector> blocks = new ArrayList<>();

    /**
     * Empty blocks.
     *
     * @param width how many sums each holds
     */
    public PatientBlocks(int width) {
        this.width = width;
        for (int block = 0; block < BLOCKS; block++) {
            blocks.add(EMPTY);
        }
    }

    /** The sums of the patient's block, to add to. */
    public RealVector of(EyeKeys keys) {
        return filled(keys.patient().hashCode() * SPREAD >>> 25);
    }

    private ArrayRealVector filled(int block) {
        ArrayRealVector sums = blocks.get(block);
        if (sums.getDimension() == 0) {
            sums = new ArrayRealVector(width);
            blocks.set(block, sums);
        }
        return sums;
    }

    /** Adds the sums of other patients. */
    public void merge(PatientBlocks other) {
        for (int block = 0; block < BLOCKS; block++) {
            ArrayRealVector theirs = other.blocks.get(block);
            if (theirs.getDimension() > 0) {
                filled(block).combineToSelf(1, 1, theirs);
            }
        }
    }

    /** The blocks that have a patient. */
    public List<RealVector> filled() {
        return blocks.stream()
                .filter(block -> block.getDimension() > 0)
                .<RealVector>map(block -> block)
                .toList();
    }

    /** As many blocks as are filled, drawn with replacement. */
    public List<RealVector> drawn(RandomGenerator random) {
        List<RealVector> filled = filled();
        return Stream.generate(() -> filled.get(random.nextInt(filled.size())))
                .limit(filled.size())
                .toList();
    }

    /** The sums of these blocks together. */
    public RealVector total(List<RealVector> some) {
        RealVector total = new ArrayRealVector(width);
        some.forEach(block -> total.combineToSelf(1, 1, block));
        return total;
    }
}
