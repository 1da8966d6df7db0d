package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.RISKS_NOT_EXCLUDED;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.lensward.eye.Examination;
import org.lensward.eye.History;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;

/** What the record does not say and the named risks would ask: unknown, never absent. */
final class Silences {

    private Silences() {}

    static Stream<Finding> name(Subject subject) {
        Examination seen = subject.eye().examination();
        History history = subject.eye().history();
        List<String> silent = new ArrayList<>();
        if (seen.pressure().isEmpty()) {
            silent.add("pressure inside the eye");
        }
        boolean endothelium =
                seen.endothelialDensity().isPresent() || seen.cornealThickness().isPresent();
        if (!endothelium && history.unknown(Sign.CORNEA_GUTTATA)) {
            silent.add("endothelium");
        }
        if (all(history, Sign.MACULOPATHY, Sign.EPIRETINAL_MEMBRANE, Sign.DIABETIC_RETINOPATHY)) {
            silent.add("macula");
        }
        if (all(history, Sign.TAMSULOSIN, Sign.TERAZOSIN, Sign.ALFUZOSIN, Sign.DOXAZOSIN, Sign.OTHER_ALPHA_BLOCKER)) {
            silent.add("alpha blockers");
        }
        if (all(history, Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT, Sign.ANTIPLATELET_DRUG)) {
            silent.add("drugs that thin the blood");
        }
        if (all(history, Sign.PHACODONESIS, Sign.LENS_DISLOCATION, Sign.PSEUDOEXFOLIATION)
                && seen.zonuleLoss().isEmpty()) {
            silent.add("zonules");
        }
        return silent.isEmpty()
                ? Stream.empty()
                : Stream.of(Finding.of(RISKS_NOT_EXCLUDED, subject.person().evidence(), String.join(", ", silent)));
    }

    private static boolean all(History history, Sign... signs) {
        return Stream.of(signs).allMatch(history::unknown);
    }
}
