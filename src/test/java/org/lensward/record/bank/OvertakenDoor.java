package org.lensward.record.bank;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;

/** The real door, behind which something happens just before each transaction. */
record OvertakenDoor(RecordDoor door, Runnable before) implements RecordDoor {

    @Override
    public Bundle gather(List<String> questions) {
        return door.gather(questions);
    }

    @Override
    public int count(String search) {
        return door.count(search);
    }

    @Override
    public Optional<Bundle> transact(Bundle transaction) {
        before.run();
        return door.transact(transaction);
    }
}
