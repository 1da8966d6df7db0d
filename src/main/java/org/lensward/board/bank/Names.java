package org.lensward.board.bank;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.lens.stock.LensKind;
import org.lensward.record.Shelf;
import org.lensward.record.stock.SupplyRequests;

/** What people call lens models, places and patients; what nobody named keeps the name the record has for it. */
final class Names {

    private final Shelf shelf;

    Names(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * Something to choose.
     *
     * @param id as the record refers to it
     * @param words as people call it
     */
    record Choice(String id, String words) {}

    String model(LensKind kind) {
        return SupplyRequests.name(kind, shelf);
    }

    /** Model, signed power, cylinder. */
    String lens(LensKind kind) {
        return model(kind) + " " + strength(kind);
    }

    static String strength(LensKind kind) {
        return kind.power().signed()
                + kind.cylinder().map(each -> ", cylinder " + each.rounded()).orElse("");
    }

    String place(String location) {
        return shelf.find(Location.class, new Reference(location))
                .filter(Location::hasName)
                .map(Location::getName)
                .orElseGet(() -> id(location));
    }

    String owner(String organization) {
        return shelf.find(Organization.class, new Reference(organization))
                .filter(Organization::hasName)
                .map(Organization::getName)
                .orElseGet(() -> id(organization));
    }

    /** Who the booking is for; "not in the list" where the booking is no longer active. */
    String patient(String booking) {
        return shelf.find(ServiceRequest.class, new Reference(booking))
                .flatMap(each -> shelf.find(Patient.class, each.getSubject()))
                .map(Names::words)
                .orElse("not on any list");
    }

    static String words(Patient patient) {
        HumanName name = patient.getNameFirstRep();
        String whole = Stream.concat(
                        Stream.ofNullable(name.getFamily()),
                        name.getGiven().stream().map(Object::toString))
                .filter(part -> !part.isBlank())
                .reduce((family, given) -> family + (family.contains(",") ? " " : ", ") + given)
                .orElse("without a name");
        return whole
                + Optional.ofNullable(patient.getBirthDateElement().getValueAsString())
                        .map(born -> ", born " + born)
                        .orElse("");
    }

    List<Choice> models() {
        return choices(
                DeviceDefinition.class,
                each -> each.hasDeviceName()
                        ? each.getDeviceNameFirstRep().getName()
                        : each.getIdElement().getIdPart());
    }

    List<Choice> places() {
        return choices(
                Location.class,
                each -> each.hasName() ? each.getName() : each.getIdElement().getIdPart());
    }

    private <T extends Resource> List<Choice> choices(Class<T> type, Function<T, String> words) {
        return shelf.all(type)
                .map(each -> new Choice(Shelf.name(each), words.apply(each)))
                .sorted(Comparator.comparing(Choice::words))
                .toList();
    }

    /** The id alone, as addresses of pages carry it. */
    static String id(String reference) {
        return reference.substring(reference.indexOf('/') + 1);
    }
}
