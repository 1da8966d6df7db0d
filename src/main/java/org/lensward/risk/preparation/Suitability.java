package org.lensward.risk.preparation;

/**
 * Whether a kind of lens suits this eye.
 *
 * @param type which kind
 * @param judgement whether it suits, and why
 * @param source where the rule comes from
 */
public record Suitability(LensType type, Judgement judgement, String source) {}
