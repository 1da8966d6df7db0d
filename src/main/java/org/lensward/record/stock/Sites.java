package org.lensward.record.stock;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Shelf;

/** Which site a theatre or a store belongs to: the outermost Location it is part of. What is part of nothing is a site of its own. */
final class Sites {

    private final Shelf shelf;

    Sites(Shelf shelf) {
        this.shelf = shelf;
    }

    String of(String location) {
        String here = location;
        Set<String> seen = new HashSet<>();
        Optional<String> next = Optional.of(location);
        while (next.isPresent() && seen.add(next.get())) {
            here = next.get();
            next = shelf.find(Location.class, new Reference(here))
                    .filter(Location::hasPartOf)
                    .map(found -> Shelf.name(found.getPartOf()));
        }
        return here;
    }

    /** The same carton, at its site. */
    LensUnit at(LensUnit unit) {
        return new LensUnit(
                unit.evidence(),
                unit.model(),
                unit.power(),
                unit.cylinder(),
                unit.identity(),
                of(unit.location()),
                unit.owner(),
                unit.state(),
                unit.heldFor());
    }
}
