package org.lensward.lens;

import java.util.List;
import java.util.Optional;

/**
 * The lens models a hospital implants.
 *
 * @param models in the order of the record
 */
public record Catalogue(List<LensModel> models) {

    public Catalogue {
        models = List.copyOf(models);
    }

    /** The model defined by that resource, such as {@code DeviceDefinition/lens-1}. */
    public Optional<LensModel> named(String resource) {
        return models.stream()
                .filter(model -> model.evidence().resource().equals(resource))
                .findFirst();
    }

    /** The models to use at a site where the surgeon named none: those marked as house lens, or all if none is. */
    public List<LensModel> houseLenses(LensSite site) {
        List<LensModel> fitting =
                models.stream().filter(model -> model.site() == site).toList();
        List<LensModel> marked = fitting.stream().filter(LensModel::houseLens).toList();
        return marked.isEmpty() ? fitting : marked;
    }
}
