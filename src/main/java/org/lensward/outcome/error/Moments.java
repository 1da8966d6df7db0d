package org.lensward.outcome.error;

/**
 * The first four central moments of numbers as they pass, updated and merged without loss of digits (Pébay, Sandia report
 * SAND2008-6212, 2008; value from memory).
 */
final class Moments {

    private long count;
    private double mean;
    private double second;
    private double third;
    private double fourth;

    void add(double value) {
        long before = count++;
        double delta = value - mean;
        double step = delta / count;
        double term = delta * step * before;
        mean += step;
        fourth += term * step * step * ((double) count * count - 3.0 * count + 3)
                + 6 * step * step * second
                - 4 * step * third;
        third += term * step * (count - 2.0) - 3 * step * second;
        second += term;
    }

    void merge(Moments other) {
        if (other.count == 0) {
            return;
        }
        double a = count;
        double b = other.count;
        double n = a + b;
        double delta = other.mean - mean;
        double part = delta / n;
        double joined = second + other.second + delta * part * a * b;
        double joinedThird = third
                + other.third
                + delta * part * part * a * b * (a - b)
                + 3 * part * (a * other.second - b * second);
        fourth = fourth
                + other.fourth
                + delta * part * part * part * a * b * (a * a - a * b + b * b)
                + 6 * part * part * (a * a * other.second + b * b * second)
                + 4 * part * (a * other.third - b * third);
        third = joinedThird;
        second = joined;
        mean += b * part;
        count += other.count;
    }

    long count() {
        return count;
    }

    double mean() {
        return mean;
    }

    /** With count - 1 degrees of freedom. */
    double deviation() {
        return Math.sqrt(second / (count - 1));
    }

    /** count times the sum of fourth powers about a point, by the squared sum of squares about the mean: 3 for normal errors. */
    double kurtosisAbout(double point) {
        double off = mean - point;
        double sum = fourth + 4 * off * third + 6 * off * off * second + count * off * off * off * off;
        return count * sum / (second * second);
    }
}
