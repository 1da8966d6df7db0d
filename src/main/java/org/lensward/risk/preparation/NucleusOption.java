package org.lensward.risk.preparation;

/**
 * One way of taking the nucleus apart, judged for this eye.
 *
 * @param method which way
 * @param judgement whether it suits, and why; never {@code SUITS} while something it needs was not measured
 */
public record NucleusOption(NucleusMethod method, Judgement judgement) {}
