package org.lensward.outcome.constant;

import java.util.Optional;
import org.lensward.eye.BiometryMethod;

/**
 * What a constant holds for. Constants are never shared across models or methods.
 *
 * @param surgeon key of the surgeon; empty for all surgeons
 * @param model key of the lens model
 * @param method of the axial length
 */
public record Scope(Optional<String> surgeon, String model, BiometryMethod method) {}
