package org.lensward.board.step;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.check.CheckState;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.SiteCodesFile;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SitePlanning;

/** The plan that a lens check makes again is read through the hospital's map, as the plan itself was. */
class SiteCodedCheckTest {

    private static final Path FOLDER = Path.of("demo-data/three-hospitals");

    @ParameterizedTest
    @CsvSource({"north, n-b, N-40117", "middle, mid-b, P77-0031", "south, s-b, 900-114"})
    void a_surgeon_confirms_a_plan_of_a_hospital_with_codes_of_its_own(String hospital, String id, String number)
            throws IOException {
        FhirContext fhir = Fhir.r4();
        Policy policy = PolicyFile.shipped();
        Clock clock = Clock.systemUTC();
        SiteCodes codes = SiteCodesFile.orNone(FOLDER.resolve(hospital).resolve("site-codes.yaml"));
        String booking = "ServiceRequest/" + id;
        Bundle all = fhir.newJsonParser()
                .parseResource(
                        Bundle.class, Files.readString(FOLDER.resolve(hospital).resolve("in.json")));
        twoIdentifiers(all, number);
        LensChecks checks = new LensChecks(new SitePlanning(fhir, policy, codes), policy.check(), clock);
        BundledBooking booked =
                new BundledBooking(all, booking, checks, fhir).planned(new BundlePlanning(fhir, policy, codes, clock));

        LensChecks without = new LensChecks(fhir, policy, policy.check(), clock);
        assertThat(without.confirm(all, booking, "The surgeon").findings())
                .as("without the map it is another plan")
                .extracting(Finding::code)
                .containsExactly(FindingCode.CHECK_PLAN_CHANGED);
        CheckAnswer confirmed = booked.act((each, now) -> each.confirm(now, booking, "The surgeon"));

        assertThat(confirmed.findings()).isEmpty();
        assertThat(((CheckAnswer.Write) confirmed).state()).isEqualTo(CheckState.CONFIRMED);
    }

    /** The demo's patients have one number that counts; a lens check wants two. */
    private static void twoIdentifiers(Bundle all, String number) {
        Patient patient = new Shelf(all).all(Patient.class).findFirst().orElseThrow();
        Identifier counted = patient.getIdentifier().stream()
                .filter(each -> number.equals(each.getValue()))
                .findFirst()
                .orElseThrow();
        patient.addIdentifier(counted.copy().setValue(number + "-2"));
    }
}
