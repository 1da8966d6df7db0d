package org.lensward.outcome;

/**
 * Which eye of which person, by keys that mean nothing outside the record. Prints neither.
 *
 * @param patient the person; both eyes of one share it
 * @param operation the operation; each has its own
 */
public record EyeKeys(String patient, String operation) {

    public EyeKeys {
        if (patient.isBlank() || operation.isBlank()) {
            throw new IllegalArgumentException("An operated eye has the key of its patient and of its operation");
        }
    }

    @Override
    public String toString() {
        return "an operated eye";
    }
}
