package org.lensward.risk.preparation;

import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * From when the retina is looked after particularly.
 *
 * @param longEye an axial length above it makes detachment likelier
 * @param youngAge years below which detachment is likelier
 */
public record RetinaPolicy(Limit<Millimetres> longEye, Limit<PureNumber> youngAge) {}
