package org.lensward.record.site;

import java.util.List;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.finding.FindingCode;
import org.lensward.record.Doubt;
import org.lensward.record.Systems;

/** Puts UCUM in place of a hospital's spelling of a unit; the spelling stays as the unit's words. */
final class UnitTranslation {

    private final SiteCodes codes;
    private final List<Doubt> doubts;

    UnitTranslation(SiteCodes codes, List<Doubt> doubts) {
        this.codes = codes;
        this.doubts = doubts;
    }

    void translate(Resource resource) {
        for (UnitInUse used : UnitInUse.of(resource)) {
            List<MappedUnit> readings = codes.readings(used.kind(), used.unit());
            if (readings.size() == 1) {
                translate(used, readings.get(0));
            } else if (!readings.isEmpty()) {
                String several = readings.stream().map(MappedUnit::toString).collect(Collectors.joining(" or "));
                doubts.add(new Doubt(
                        FindingCode.SITE_CODE_AMBIGUOUS,
                        resource,
                        used.field(),
                        List.of("the unit '" + used.unit() + "'", several)));
            }
        }
    }

    private static void translate(UnitInUse used, MappedUnit reading) {
        if (used.quantity().hasValue()) {
            used.quantity().setValue(used.quantity().getValue().multiply(reading.factor()));
        }
        if (!used.quantity().hasUnit()) {
            used.quantity().setUnit(used.unit());
        }
        used.quantity().setSystem(Systems.UCUM).setCode(reading.ucum());
    }
}
