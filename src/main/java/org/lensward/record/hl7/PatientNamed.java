package org.lensward.record.hl7;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;
import org.lensward.record.incoming.Whom;

/** The patient of a message: PID-3 by the site's assigning authorities, checked by the day of birth in PID-7. */
final class PatientNamed {

    private PatientNamed() {}

    static Whom in(Message message, Site site) {
        Fields pid = message.only("PID");
        List<Identifier> identifiers = new ArrayList<>();
        for (int each = 0; each < pid.repetitions(3); each++) {
            identifier(pid, each, site).ifPresent(identifiers::add);
        }
        if (identifiers.isEmpty()) {
            throw new RefusedInput(FindingCode.PATIENT_SYSTEM_UNKNOWN, pid.at(3), pid.at(3));
        }
        return new Whom(pid.at(3), identifiers, new Times(site.zone()).day(pid, 7));
    }

    /** The authority may go by its namespace or by its universal id. */
    private static Optional<Identifier> identifier(Fields pid, int repetition, Site site) {
        String value = pid.text(3, repetition, 1);
        Optional<String> system =
                site.system(pid.text(3, repetition, 4, 1)).or(() -> site.system(pid.text(3, repetition, 4, 2)));
        return value.isEmpty()
                ? Optional.empty()
                : system.map(each -> new Identifier().setSystem(each).setValue(value));
    }
}
