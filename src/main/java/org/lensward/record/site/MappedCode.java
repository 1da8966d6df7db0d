package org.lensward.record.site;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lensward.record.Vocabulary;

/**
 * One local code and what it stands for.
 *
 * @param code as the hospital writes it
 * @param means what it stands for
 * @param eye the eye it carries in itself, if any
 */
public record MappedCode(
        LocalCode code, Meaning means, @Nullable SiteEye eye) {

    public MappedCode {
        refuseKnown(code);
    }

    /** A code with a meaning everywhere is nobody's own to redefine. */
    static void refuseKnown(LocalCode code) {
        Vocabulary.meaning(code.coding()).ifPresent(words -> {
            throw new IllegalArgumentException(code + " already means " + words + " and needs no entry");
        });
    }

    Optional<SiteEye> side() {
        return Optional.ofNullable(eye);
    }
}
