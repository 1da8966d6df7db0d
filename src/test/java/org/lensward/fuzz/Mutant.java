package org.lensward.fuzz;

import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;

/**
 * A record with something changed in it.
 *
 * @param seed the folder of demo-data it came from
 * @param what was done to it
 * @param bundle the record now
 * @param changed the resource whose side, unit, sign or patient was changed; empty where something else was
 */
record Mutant(String seed, String what, Bundle bundle, Optional<String> changed) {

    @Override
    public String toString() {
        return seed + ": " + what;
    }
}
