package org.lensward.demo;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.context.support.IValidationSupport;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.StructureDefinition.StructureDefinitionKind;
import org.hl7.fhir.r4.model.StructureDefinition.TypeDerivationRule;
import org.junit.jupiter.api.Test;

class BaseTypeDefinitionsTest {

    private final FhirContext fhir = FhirContext.forR4();

    /** Source: HL7 FHIR R4 (4.0.1) profiles-types.xml and profiles-resources.xml. */
    @Test
    void tells_the_ancestors_that_the_published_r4_definitions_tell() {
        IValidationSupport published = new DefaultProfileValidationSupport(fhir);
        List<StructureDefinition> types = published.<StructureDefinition>fetchAllStructureDefinitions().stream()
                .filter(type -> type.getKind() != StructureDefinitionKind.LOGICAL)
                .filter(type -> type.getDerivation() != TypeDerivationRule.CONSTRAINT)
                .filter(type -> type.getUrl().equals("http://hl7.org/fhir/StructureDefinition/" + type.getType()))
                .toList();
        BaseTypeDefinitions ours = new BaseTypeDefinitions(fhir);

        assertThat(types).hasSizeGreaterThan(190);
        assertThat(types).allSatisfy(type -> assertThat(ancestors(ours, type.getUrl()))
                .as(type.getType())
                .isEqualTo(ancestors(published, type.getUrl())));
    }

    private static List<String> ancestors(IValidationSupport definitions, String url) {
        List<String> names = new ArrayList<>();
        String next = url;
        while (next != null) {
            IBaseResource definition = definitions.fetchStructureDefinition(next);
            if (definition == null) {
                names.add("unknown " + next);
                return names;
            }
            names.add(((StructureDefinition) definition).getType());
            next = ((StructureDefinition) definition).getBaseDefinition();
        }
        return names;
    }
}
