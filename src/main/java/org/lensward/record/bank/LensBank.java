package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.UNIT_ALREADY_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_EXPIRED;
import static org.lensward.finding.FindingCode.UNIT_LABEL_INCOMPLETE;
import static org.lensward.finding.FindingCode.UNIT_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_NOT_MADE;
import static org.lensward.finding.FindingCode.UNIT_STORE_UNKNOWN;

import ca.uhn.fhir.context.FhirContext;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.record.CatalogueReader;
import org.lensward.record.Codes;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/**
 * The lens bank as it stands in the record. Every movement is one transaction, guarded by the version that was looked at: of two people who
 * move one carton at once, one succeeds and the other is told to look again. Nothing is kept here; two banks on one record are one bank.
 */
public final class LensBank {

    private static final int CARTONS_PER_QUESTION = 50;
    private static final int MOST_CARTONS_OF_A_LOT = 10_000;

    private final RecordDoor door;
    private final Evidences evidences;
    private final UnitReader reader;
    private final UnitMover mover;

    public LensBank(FhirContext fhir, RecordDoor door) {
        this.door = door;
        this.evidences = new Evidences(fhir);
        this.reader = new UnitReader(evidences);
        this.mover = new UnitMover(door, reader);
    }

    /** Every carton that can be read, in whatever state, and findings about the others. */
    public Outcome<List<LensUnit>> units() {
        return WholeBank.read(door, WholeBank.PART).then(devices -> reader.readAll(devices.stream()));
    }

    /** Every carton among what was read already, such as a Bundle from a file. */
    public static Outcome<List<LensUnit>> units(FhirContext fhir, Shelf shelf) {
        return new UnitReader(new Evidences(fhir))
                .readAll(shelf.all(Device.class)
                        .filter(device -> Codes.has(device.getType(), Systems.DEVICE_TYPE, UnitDevice.TYPE)));
    }

    /** One carton, such as {@code Device/unit-1}. */
    public Outcome<LensUnit> unit(String name) {
        return mover.look(name).then(reader::read);
    }

    /**
     * The cartons whose label says that, found without reading the rest of the bank; several where a lot has no serial numbers.
     *
     * @param label device identifier, lot, serial number and expiry
     */
    public Outcome<List<LensUnit>> labelled(LensUnit.Identity label) {
        String search = WholeBank.SEARCH + "&udi-di=" + URLEncoder.encode(label.device(), StandardCharsets.UTF_8);
        return CountedSearch.take(door, search)
                .then(devices -> reader.readAll(devices.stream()))
                .then(units -> Outcome.ready(units.stream()
                        .filter(unit -> unit.identity().equals(label))
                        .toList()));
    }

    /** The cartons reserved, picked or implanted for a booking, as far as this bank moved them. */
    public Outcome<List<LensUnit>> heldFor(String booking) {
        return reader.readAll(new Shelf(door.gather(List.of(HeldUnits.question(booking))))
                .all(Device.class)
                .filter(device -> HeldUnits.isHeld(device, booking)));
    }

    /** Takes a carton in. A serial number that is in the record already is refused; a lot without serial numbers is counted. */
    public Outcome<LensUnit> receive(Delivery carton, Signature signature) {
        LensUnit.Identity label = carton.identity();
        if (label.expiry().isBefore(carton.day())) {
            return refused(UNIT_EXPIRED, carton.model(), label.expiry(), carton.day());
        }
        return model(carton).then(model -> name(label, carton.model())
                .then(name -> mover.create(UnitDevice.of(name, carton, model), carton.day(), signature)));
    }

    /** The model's name, if the model is in the catalogue and made so; a model that cannot be read whole is not held against. */
    private Outcome<String> model(Delivery carton) {
        Shelf shelf = new Shelf(door.gather(List.of(carton.model())));
        Optional<DeviceDefinition> model = shelf.find(DeviceDefinition.class, new Reference(carton.model()));
        if (model.isEmpty()) {
            return refused(UNIT_MODEL_UNKNOWN, carton.model(), carton.model());
        }
        return new CatalogueReader(evidences)
                .read(shelf)
                .named(carton.model())
                .filter(made -> !carton.isMadeAs(made))
                .<Outcome<String>>map(made -> refused(UNIT_NOT_MADE, carton.model(), made.name(), carton.strength()))
                .orElseGet(() -> Outcome.ready(name(model.get())));
    }

    private static String name(DeviceDefinition model) {
        return model.hasDeviceName() ? model.getDeviceNameFirstRep().getName() : Shelf.name(model);
    }

    private Outcome<String> name(LensUnit.Identity label, String model) {
        Optional<String> bySerial = UnitName.bySerial(label);
        if (bySerial.isPresent()) {
            Optional<Device> there =
                    new Shelf(door.gather(List.of(bySerial.get()))).find(Device.class, new Reference(bySerial.get()));
            return there.<Outcome<String>>map(device -> Outcome.withheld(
                            Finding.of(UNIT_ALREADY_IN_BANK, evidences.of(device, ""), UnitDevice.state(device))))
                    .orElseGet(() -> Outcome.ready(bySerial.get()));
        }
        return label.lot().isPresent() ? Outcome.ready(firstFree(label)) : refused(UNIT_LABEL_INCOMPLETE, model);
    }

    private String firstFree(LensUnit.Identity label) {
        for (int from = 1; from < MOST_CARTONS_OF_A_LOT; from += CARTONS_PER_QUESTION) {
            List<String> names = IntStream.range(from, from + CARTONS_PER_QUESTION)
                    .mapToObj(running -> UnitName.byLot(label, running).orElseThrow())
                    .toList();
            Shelf taken = new Shelf(door.gather(names));
            Optional<String> free = names.stream()
                    .filter(name ->
                            taken.find(Device.class, new Reference(name)).isEmpty())
                    .findFirst();
            if (free.isPresent()) {
                return free.get();
            }
        }
        throw new IllegalArgumentException("No lot has " + MOST_CARTONS_OF_A_LOT + " cartons");
    }

    /** Moves a carton as the signature's person says. What is already so is not written again. */
    public Outcome<LensUnit> move(String unit, Movement movement, Signature signature) {
        return move(Sighting.asItIs(unit), movement, signature);
    }

    /** Moves a carton if it still is as the person saw it, or already is as they want it. */
    public Outcome<LensUnit> move(Sighting seen, Movement movement, Signature signature) {
        movement.booking().ifPresent(booking -> RecordName.require("ServiceRequest", booking));
        Optional<String> unknown = movement.to().filter(store -> !isPlace(store));
        return unknown.map(store -> LensBank.<LensUnit>refused(UNIT_STORE_UNKNOWN, store, store))
                .orElseGet(() -> mover.move(seen, movement, signature));
    }

    private boolean isPlace(String store) {
        RecordName.require("Location", store);
        return new Shelf(door.gather(List.of(store)))
                .find(Location.class, new Reference(store))
                .isPresent();
    }

    /** What happened to a carton, the latest first. */
    public List<UnitEvent> history(String unit) {
        RecordName.require("Device", unit);
        return UnitEvent.all(new Shelf(door.gather(List.of("Provenance?target=" + unit + "&_count=500"))));
    }

    /** Every carton of a lot: where it is, who is to have it, who has it in the eye. */
    public Recall recall(RecalledLot lot, Lookup lookup) {
        return new RecallSearch(door, evidences).find(lot, lookup);
    }

    /** Puts what a recall found on the shelves or in theatre in quarantine; one answer for each carton. */
    public List<Outcome<LensUnit>> quarantine(Recall recall, String because, Signature signature) {
        return recall.usable()
                .map(unit -> mover.insist(unit.evidence().resource(), new Movement.Quarantine(because), signature))
                .toList();
    }

    /** Records what was implanted, completes the plan and returns the rest of the kit, in one transaction. */
    public Outcome<ImplantCard> implant(Implantation implantation, Signature signature) {
        return new ImplantRecorder(door, reader).record(implantation, signature);
    }

    private static <T> Outcome<T> refused(FindingCode code, String evidence, Object... particulars) {
        return Outcome.withheld(Finding.of(code, new Evidence(evidence, "", ""), particulars));
    }
}
