package org.lensward.record.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.outcome.constant.Proposal;
import org.lensward.record.FormulaCodes;
import org.lensward.record.Shelf;
import org.lensward.record.bank.RecordDoor;

/** Takes one proposed constant into the record, and says how that went. */
public final class AdoptedConstant {

    /** How every refusal begins. */
    public static final String NOT = "Not adopted: ";

    private final RecordDoor door;
    private final Proposal proposal;

    private AdoptedConstant(RecordDoor door, Proposal proposal) {
        this.door = door;
        this.proposal = proposal;
    }

    public static AdoptedConstant of(RecordDoor door, Proposal proposal) {
        return new AdoptedConstant(door, proposal);
    }

    /**
     * By a named clinician.
     *
     * @param version the hospital's name of its constants from then on
     * @param at when it is written
     * @return what happened, in a sentence; it begins with {@link #NOT} where nothing was written
     */
    public String by(String clinician, LocalDate on, String version, Instant at) {
        Optional<String> obstacle = ConstantAdoption.obstacle(proposal);
        if (obstacle.isPresent()) {
            return NOT + obstacle.get() + ".";
        }
        String model = proposal.scope().model();
        Optional<DeviceDefinition> standing =
                new Shelf(door.gather(List.of(model))).find(DeviceDefinition.class, new Reference(model));
        if (standing.isEmpty()) {
            return NOT + model + " is not in the record.";
        }
        var transaction = ConstantAdoption.transaction(standing.get(), proposal.adopt(clinician, on, version), at);
        return door.transact(transaction).isEmpty()
                ? NOT + model + " was changed meanwhile; look again."
                : "Adopted: " + FormulaCodes.words(proposal.proposed()) + " for " + model + ", "
                        + proposal.scope().method() + ", version " + version + ".";
    }
}
