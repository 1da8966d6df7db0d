package org.lensward.outcome.complication;

/**
 * Exact binomial limits of a funnel plot at one number of operations (Spiegelhalter, Stat Med 2005;24:1185; discrete limits). A count
 * inside or on the limits is common variation.
 *
 * @param operations of the unit or surgeon
 * @param lowerAlarm largest count that is still too few at 99.9 %; -1 where none is
 * @param lowerWarning the same at 95 %
 * @param upperWarning smallest count k with P(X &lt;= k) at least 0.975
 * @param upperAlarm smallest count k with P(X &lt;= k) at least 0.9995
 */
public record FunnelLimits(
        long operations, long lowerAlarm, long lowerWarning, long upperWarning, long upperAlarm) {}
