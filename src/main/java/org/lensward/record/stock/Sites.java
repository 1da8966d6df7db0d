package org.lensward.record.stock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Shelf;

/** Which site a theatre or a store belongs to: the outermost Location it is part of. What is part of nothing is a site of its own. */
public final class Sites {

    private final Shelf shelf;

    public Sites(Shelf shelf) {
        this.shelf = shelf;
    }

    /** Locations that are part of one another in a ring are one site, named by the first of them in the alphabet. */
    public String of(String location) {
        List<String> way = new ArrayList<>();
        Optional<String> next = Optional.of(location);
        while (next.isPresent() && !way.contains(next.get())) {
            way.add(next.get());
            next = around(next.get());
        }
        return next.map(way::indexOf)
                .map(first -> Collections.min(way.subList(first, way.size())))
                .orElseGet(() -> way.get(way.size() - 1));
    }

    private Optional<String> around(String location) {
        return shelf.find(Location.class, new Reference(location))
                .map(found -> Shelf.name(found.getPartOf()))
                .filter(name -> !name.isEmpty());
    }

    /** The same carton, at its site. */
    LensUnit at(LensUnit unit) {
        return unit.at(of(unit.location()));
    }
}
