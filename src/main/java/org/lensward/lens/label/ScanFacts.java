package org.lensward.lens.label;

import java.util.List;

/**
 * What one scan says.
 *
 * @param issuer by whose rules
 * @param facts in the order they stand
 */
record ScanFacts(Issuer issuer, List<LabelFact> facts) {

    ScanFacts {
        facts = List.copyOf(facts);
    }
}
