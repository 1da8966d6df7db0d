package org.lensward.board.fhir;

import java.time.DateTimeException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Type;
import org.springframework.http.HttpStatus;

/**
 * Parameters of an operation, or the parts of one. Every fault is refused by the name of the parameter.
 *
 * @param parameters as sent
 * @param place such as {@code box.}; empty at the top
 */
record Given(List<ParametersParameterComponent> parameters, String place) {

    /** The parameters of a request. */
    static Given of(Resource resource) {
        if (resource instanceof Parameters parameters) {
            return new Given(parameters.getParameter(), "");
        }
        throw malformed("Expected Parameters, read a " + resource.fhirType() + ".");
    }

    /** The same, if there are no others than these. */
    Given only(String... known) {
        parameters.stream()
                .map(ParametersParameterComponent::getName)
                .filter(name -> !Set.of(known).contains(name))
                .findFirst()
                .ifPresent(name -> {
                    throw malformed("The parameter " + place + name + " is not known; known are "
                            + String.join(", ", Arrays.asList(known)) + ".");
                });
        return this;
    }

    boolean has(String name) {
        return parameters.stream().anyMatch(each -> name.equals(each.getName()));
    }

    /** All values of a parameter that may be repeated. */
    <T extends Type> Stream<T> all(String name, Class<T> type) {
        return named(name).map(each -> Optional.ofNullable(each.getValue())
                .filter(type::isInstance)
                .map(type::cast)
                .orElseThrow(() -> refused(name, "is no " + kind(type))));
    }

    /** The value of a parameter that may be there once. */
    <T extends Type> Optional<T> one(String name, Class<T> type) {
        return once(name, all(name, type).toList());
    }

    /** Likewise a resource. */
    <T extends Resource> Optional<T> resource(String name, Class<T> type) {
        return once(
                name,
                named(name)
                        .map(each -> Optional.ofNullable(each.getResource())
                                .filter(type::isInstance)
                                .map(type::cast)
                                .orElseThrow(() -> refused(name, "is no " + type.getSimpleName())))
                        .toList());
    }

    /** The texts of a parameter that may be repeated, whatever their primitive type: string or code. */
    Stream<String> texts(String name) {
        return all(name, PrimitiveType.class).map(each -> Optional.ofNullable(each.getValueAsString())
                .filter(text -> !text.isBlank())
                .orElseThrow(() -> refused(name, "is empty")));
    }

    Optional<String> text(String name) {
        return once(name, texts(name).toList());
    }

    /** The text of a parameter, read. */
    <T> Optional<T> read(String name, Function<String, T> reader) {
        return text(name).map(text -> checked(name, () -> reader.apply(text)));
    }

    /** The parts of a parameter, each time it is there. */
    Stream<Given> parts(String name) {
        List<Given> all = named(name).map(each -> new Given(each.getPart(), "")).toList();
        return IntStream.range(0, all.size())
                .mapToObj(index -> new Given(
                        all.get(index).parameters(), place + name + (all.size() > 1 ? "[" + index + "]" : "") + "."));
    }

    Optional<Given> part(String name) {
        return once(name, parts(name).toList());
    }

    /** What is made of a parameter; what its value type refuses is refused by the parameter's name. */
    <T> T checked(String name, Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException | DateTimeException unreadable) {
            throw refused(name, "cannot be read: " + unreadable.getMessage());
        }
    }

    <T> T required(String name, Optional<T> value) {
        return value.orElseThrow(() -> refused(name, "is missing"));
    }

    FhirRefusal refused(String name, String why) {
        return malformed("The parameter " + place + name + " " + why + ".");
    }

    private Stream<ParametersParameterComponent> named(String name) {
        return parameters.stream().filter(each -> name.equals(each.getName()));
    }

    private <T> Optional<T> once(String name, List<T> values) {
        if (values.size() > 1) {
            throw refused(name, "is given more than once");
        }
        return values.stream().findFirst();
    }

    private static String kind(Class<?> type) {
        return type == PrimitiveType.class ? "text" : type.getSimpleName();
    }

    private static FhirRefusal malformed(String why) {
        return new FhirRefusal(HttpStatus.BAD_REQUEST, IssueType.INVALID, why);
    }
}
