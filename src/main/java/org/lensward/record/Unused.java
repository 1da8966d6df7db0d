package org.lensward.record;

import org.lensward.finding.Coded;
import org.lensward.finding.Evidence;

/**
 * Something in the record that could not be used for an outcome.
 *
 * @param reason why
 * @param evidence the resource, and the element where it is one
 */
public record Unused(Reason reason, Evidence evidence) {

    /** Why a resource is of no use. */
    public enum Reason implements Coded {
        OPERATION_WITHOUT_EYE("an operation that does not say which one eye"),
        OPERATION_WITHOUT_DATE("an operation without its day"),
        LENS_NOT_RECORDED("an operation that names no lens implanted"),
        LENS_NOT_THERE("the lens implanted is named but its Device is not there"),
        LENS_WITHOUT_MODEL_OR_POWER("the lens implanted has no model or no labelled power"),
        LENS_OF_ANOTHER_PERSON("the lens is said to be in somebody else's eye"),
        REFRACTION_WITHOUT_EYE("a refraction that does not say which eye"),
        REFRACTION_OF_TWO_EYES("a refraction that names two eyes"),
        REFRACTION_WITHOUT_DATE("a refraction without its day"),
        REFRACTION_METHOD_NOT_TOLD("a refraction that does not say how it was found"),
        REFRACTION_AGAINST_ITS_OPERATION("a refraction that names an operation of the other eye"),
        VALUE_UNREADABLE("a value without a unit, in an unknown one, or no eye's"),
        BIOMETRY_IN_DOUBT("biometry that contradicts itself or cannot be read"),
        BIOMETRY_CHANGED("biometry that was changed after the plan rested on it"),
        COMPLICATION_WITHOUT_EYE("a complication that does not say which eye"),
        COMPLICATION_NOT_UNDERSTOOD("a complication in a code that is not understood; counted as another one");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** As a table says it. */
        @Override
        public String toString() {
            return words;
        }
    }
}
