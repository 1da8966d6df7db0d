package org.lensward.flow;

import ca.uhn.fhir.rest.server.exceptions.ResourceGoneException;
import ca.uhn.fhir.rest.server.exceptions.ResourceNotFoundException;
import java.net.URI;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Resource;

/** Follows a search through its pages, as far as they stay at the record's own address and none comes twice. */
final class Pages {

    /** Links are not always URIs that Java accepts: some servers leave {@code |} as it is. */
    private static final Pattern ORIGIN = Pattern.compile("([A-Za-z][A-Za-z0-9+.-]*)://([^/?#]*).*");

    private final URI record;
    private final Function<String, Bundle> page;

    Pages(URI record, Function<String, Bundle> page) {
        this.record = record;
        this.page = page;
    }

    /** Every resource of every page. What the server says of its search is no resource of the record. */
    List<Resource> all(Bundle first) {
        List<Resource> all = new ArrayList<>();
        Set<String> followed = new HashSet<>();
        Optional<Bundle> bundle = Optional.of(first);
        while (bundle.isPresent()) {
            bundle.get().getEntry().stream()
                    .map(Bundle.BundleEntryComponent::getResource)
                    .filter(each -> each != null && !(each instanceof OperationOutcome))
                    .forEach(all::add);
            bundle = Optional.ofNullable(bundle.get().getLink(Bundle.LINK_NEXT))
                    .map(link -> next(link.getUrl(), followed));
        }
        return all;
    }

    private Bundle next(String link, Set<String> followed) {
        String address = ORIGIN.matcher(link).matches() ? link : record + "/" + link.replaceFirst("^/", "");
        if (!origin(address).equals(origin(record.toString()))) {
            throw new RecordRefusal("page-elsewhere", "The next page is said to be at another address than the record");
        }
        if (!followed.add(address)) {
            throw new RecordRefusal("page-repeated", "A page names itself, or an earlier one, as the next");
        }
        try {
            return page.apply(address);
        } catch (ResourceGoneException | ResourceNotFoundException gone) {
            throw new RecordRefusal("page-vanished", "The record gave up a search before its last page was read");
        }
    }

    private static String origin(String address) {
        Matcher parts = ORIGIN.matcher(address);
        if (!parts.matches()) {
            return "";
        }
        String scheme = parts.group(1).toLowerCase(Locale.ROOT);
        String usual = scheme.equals("https") ? ":443" : ":80";
        String authority = parts.group(2).toLowerCase(Locale.ROOT);
        return scheme + "://" + (authority.matches(".*:\\d+") ? authority : authority + usual);
    }
}
