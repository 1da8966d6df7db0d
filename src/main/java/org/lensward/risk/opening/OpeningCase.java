package org.lensward.risk.opening;

import org.lensward.eye.Eye;
import org.lensward.eye.Person;
import org.lensward.lens.LensModel;

/** Whose eye, which eye, which lens is to go in. */
record OpeningCase(Person person, Eye eye, LensModel lens) {

    CapsuleFacts facts() {
        return new CapsuleFacts(eye);
    }
}
