package org.lensward.flow;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Resource;

/** Which elements of a resource differ; their names, not what they hold. */
final class Differences {

    /** What the server sets itself. */
    private static final List<String> SERVERS = List.of("id", "meta", "text");

    private Differences() {}

    /** Names of the elements at the top of the resource, in the order of its definition. */
    static List<String> between(Resource one, Resource other) {
        List<String> names = new ArrayList<>();
        for (Property property : other.children()) {
            if (!SERVERS.contains(property.getName())) {
                Property before = one.getNamedProperty(property.getName());
                List<Base> earlier = before == null ? List.of() : before.getValues();
                if (!Base.compareDeep(earlier, property.getValues(), true)) {
                    names.add(property.getName().replace("[x]", ""));
                }
            }
        }
        return names;
    }
}
