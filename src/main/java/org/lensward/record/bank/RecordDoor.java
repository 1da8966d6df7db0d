package org.lensward.record.bank;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;

/** What the bank needs of the record. A failure of the transport is an exception of whoever stands behind the door. */
public interface RecordDoor {

    /**
     * All that the searches and reads find, every page of it; what is read by id and is not there is not in it.
     *
     * @param questions relative to the server, such as {@code Device/unit-1}
     */
    Bundle gather(List<String> questions);

    /** How many resources the search finds, without their content. */
    int count(String search);

    /**
     * Posts one transaction.
     *
     * @return the record's answer; empty where a resource no longer had the version given, and then nothing was written
     */
    Optional<Bundle> transact(Bundle transaction);
}
