package org.lensward.demo;

import ca.uhn.fhir.context.BaseRuntimeElementDefinition;
import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.fhir.model.api.annotation.DatatypeDef;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.StructureDefinition.TypeDerivationRule;
import org.jspecify.annotations.Nullable;

/**
 * The names and ancestors of the FHIR base types, told from HAPI's model classes.
 *
 * <p>They are all the FHIRPath engine asks for while it reads search parameters off a resource. HAPI would otherwise
 * parse the full R4 definitions for it, some five seconds of work at start-up.
 */
final class BaseTypeDefinitions implements IValidationSupport {

    private static final String PREFIX = "http://hl7.org/fhir/StructureDefinition/";

    private final FhirContext fhir;

    BaseTypeDefinitions(FhirContext fhir) {
        this.fhir = fhir;
    }

    @Override
    public FhirContext getFhirContext() {
        return fhir;
    }

    @Override
    public <T extends IBaseResource> List<T> fetchAllStructureDefinitions() {
        // the engine lists the types when it is made and never looks at the list again
        return List.of();
    }

    @Override
    public @Nullable IBaseResource fetchStructureDefinition(String url) {
        if (!url.startsWith(PREFIX)) {
            return null;
        }
        String type = url.substring(PREFIX.length());
        return base(type).map(base -> definition(type, base)).orElse(null);
    }

    /** Name of the type's parent, blank for a root; empty when there is no such type. */
    private Optional<String> base(String type) {
        return switch (type) {
            case "Resource", "Element" -> Optional.of("");
            case "DomainResource" -> Optional.of("Resource");
            case "BackboneElement" -> Optional.of("Element");
            case "id" -> Optional.of("string"); // HAPI's IdType extends UriType
            default -> fhir.getResourceTypes().contains(type) ? Optional.of(resourceBase(type)) : datatypeBase(type);
        };
    }

    private String resourceBase(String type) {
        Class<?> model = fhir.getResourceDefinition(type).getImplementingClass();
        return DomainResource.class.isAssignableFrom(model) ? "DomainResource" : "Resource";
    }

    private Optional<String> datatypeBase(String type) {
        BaseRuntimeElementDefinition<?> definition = fhir.getElementDefinition(type);
        if (definition == null) {
            return Optional.empty();
        }
        Class<?> parent = definition.getImplementingClass().getSuperclass();
        DatatypeDef named = parent.getAnnotation(DatatypeDef.class);
        return Optional.of(named == null ? "Element" : named.name());
    }

    private static Resource definition(String type, String base) {
        StructureDefinition definition = new StructureDefinition();
        definition.setUrl(PREFIX + type).setName(type).setType(type);
        if (!base.isEmpty()) {
            definition.setBaseDefinition(PREFIX + base).setDerivation(TypeDerivationRule.SPECIALIZATION);
        }
        return definition;
    }
}
