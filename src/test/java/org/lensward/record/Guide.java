package org.lensward.record;

import java.nio.file.Path;
import java.util.List;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CanonicalType;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import org.hl7.fhir.r4.model.ImplementationGuide;
import org.hl7.fhir.r4.model.ImplementationGuide.ImplementationGuideDefinitionResourceComponent;
import org.hl7.fhir.r4.model.ImplementationGuide.SPDXLicense;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** The ImplementationGuide of the package: every artefact and every example, in the order of their files. */
final class Guide {

    static final Path FILE = ProfileArtefacts.ROOT.resolve("implementation-guide.json");

    private Guide() {}

    static ImplementationGuide of(List<Path> artefacts, List<Path> examples) {
        ImplementationGuide guide = head();
        artefacts.stream().filter(file -> !file.equals(FILE)).forEach(file -> entry(guide, file)
                .setName(title(resource(file))));
        for (Path file : examples) {
            Resource example = resource(file);
            ImplementationGuideDefinitionResourceComponent entry =
                    entry(guide, file).setName(example.getIdElement().getIdPart());
            entry.setExample(
                    example.getMeta().hasProfile()
                            ? new CanonicalType(ProfileArtefacts.declared(example))
                            : new BooleanType(true));
        }
        return guide;
    }

    private static ImplementationGuide head() {
        ImplementationGuide guide = new ImplementationGuide();
        guide.setId("lensward.fhir");
        guide.setUrl(ProfileArtefacts.BASE + "ImplementationGuide/lensward.fhir");
        guide.setVersion("0.1.0");
        guide.setName("LenswardFhir");
        guide.setTitle("Lensward FHIR profiles");
        guide.setStatus(PublicationStatus.ACTIVE);
        guide.setExperimental(false);
        guide.setDateElement(new DateTimeType("2026-11-25"));
        guide.setPublisher("Lensward");
        guide.setDescription("What Lensward reads from and writes to a hospital's FHIR record for cataract surgery.");
        guide.setPackageId("lensward.fhir");
        guide.setLicense(SPDXLicense.APACHE_2_0);
        guide.addFhirVersion(FHIRVersion._4_0_1);
        return guide;
    }

    private static ImplementationGuideDefinitionResourceComponent entry(ImplementationGuide guide, Path file) {
        Resource resource = resource(file);
        return guide.getDefinition()
                .addResource()
                .setReference(new Reference(
                        resource.fhirType() + "/" + resource.getIdElement().getIdPart()));
    }

    private static Resource resource(Path file) {
        return ProfileArtefacts.parse(file, Resource.class);
    }

    /** Its title; its name for want of one. */
    private static String title(Resource artefact) {
        return List.of("title", "name").stream()
                .map(artefact::getNamedProperty)
                .filter(property -> property != null && property.hasValues())
                .map(Property::getValues)
                .map(values -> values.get(0))
                .map(Base::primitiveValue)
                .findFirst()
                .orElseThrow(() -> new AssertionError(artefact.getId() + " has neither title nor name"));
    }
}
