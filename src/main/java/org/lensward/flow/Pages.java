package org.lensward.flow;

import ca.uhn.fhir.rest.server.exceptions.ResourceGoneException;
import ca.uhn.fhir.rest.server.exceptions.ResourceNotFoundException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Resource;

/** Follows a search through its pages, none of them twice. */
final class Pages {

    private final Function<String, Bundle> page;

    Pages(Function<String, Bundle> page) {
        this.page = page;
    }

    /** Every resource of every page. What the server says of its search is no resource of the record. */
    List<Resource> all(Bundle first) {
        List<Resource> all = new ArrayList<>();
        each(first, all::add);
        return all;
    }

    /** The same one after the other; only one page is in memory. */
    void each(Bundle first, Consumer<Resource> taker) {
        Set<String> followed = new HashSet<>();
        Optional<Bundle> bundle = Optional.of(first);
        while (bundle.isPresent()) {
            bundle.get().getEntry().stream()
                    .map(Bundle.BundleEntryComponent::getResource)
                    .filter(each -> each != null && !(each instanceof OperationOutcome))
                    .forEach(taker);
            bundle = Optional.ofNullable(bundle.get().getLink(Bundle.LINK_NEXT))
                    .map(link -> next(link.getUrl(), followed));
        }
    }

    private Bundle next(String link, Set<String> followed) {
        // Some servers leave these as they are, which Java takes for no address.
        String address = link.replace("|", "%7C").replace(" ", "%20");
        if (!followed.add(address)) {
            throw new RecordRefusal("page-repeated", "A page names itself, or an earlier one, as the next");
        }
        try {
            return page.apply(address);
        } catch (ResourceGoneException | ResourceNotFoundException gone) {
            throw new RecordRefusal("page-vanished", "The record gave up a search before its last page was read");
        }
    }
}
