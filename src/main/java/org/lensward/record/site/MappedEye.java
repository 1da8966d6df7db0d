package org.lensward.record.site;

/**
 * One local body site, or qualifier of one, and the eye it names.
 *
 * @param code as the hospital writes it
 * @param eye the eye
 */
public record MappedEye(LocalCode code, SiteEye eye) {

    public MappedEye {
        MappedCode.refuseKnown(code);
    }
}
