package org.lensward.lens;

/** On which side of the target the predicted refraction of a labelled power may fall. */
public enum TargetSide {
    /** The nearest step, on either side. */
    NEAREST,
    /** The nearest step that does not leave the eye more hyperopic than the target. */
    MYOPIC,
    /** The nearest step that does not leave the eye more myopic than the target. */
    HYPEROPIC
}
