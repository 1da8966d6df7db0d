package org.lensward.record;

import java.math.BigDecimal;
import java.util.Collection;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DecimalType;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.PositiveIntType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.finding.Evidence;

/** One complex extension in the making; what is empty is left out. */
final class Parts {

    private final Extension extension;

    private Parts(String name) {
        this.extension = new Extension(Systems.extension(name));
    }

    static Parts of(String name) {
        return new Parts(name);
    }

    Parts concept(String part, String system, String code, String words) {
        CodeableConcept concept = Codes.concept(system, code, words);
        extension.addExtension(part, concept);
        return this;
    }

    Parts code(String part, String code) {
        extension.addExtension(part, new CodeType(code));
        return this;
    }

    Parts quantity(String part, Quantity quantity) {
        extension.addExtension(part, quantity);
        return this;
    }

    Parts number(String part, BigDecimal number) {
        extension.addExtension(part, new DecimalType(number));
        return this;
    }

    Parts count(String part, int count) {
        extension.addExtension(part, new PositiveIntType(count));
        return this;
    }

    Parts text(String part, String text) {
        if (!text.isBlank()) {
            extension.addExtension(part, new StringType(text));
        }
        return this;
    }

    Parts texts(String part, Collection<String> texts) {
        texts.forEach(each -> text(part, each));
        return this;
    }

    Parts evidence(Collection<Evidence> evidence) {
        evidence.stream()
                .map(Evidence::resource)
                .distinct()
                .forEach(each -> extension.addExtension("evidence", new Reference(each)));
        return this;
    }

    Extension whole() {
        return extension;
    }
}
