package org.lensward.optics;

/**
 * Two surfaces with a distance between them.
 *
 * @param front power of the first, D
 * @param reduced thickness over index, m
 * @param back power of the second, D
 */
record ThickSurfaces(double front, double reduced, double back) {

    double power() {
        return front + back - reduced * front * back;
    }

    ParaxialSystem transfer() {
        return ParaxialSystem.refract(front).travel(reduced).refracted(back);
    }
}
