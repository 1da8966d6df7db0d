package org.lensward.flow;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lensward.record.UnitKind;
import org.lensward.record.site.LocalCode;
import org.lensward.record.site.MappedCode;
import org.lensward.record.site.MappedEye;
import org.lensward.record.site.MappedUnit;
import org.lensward.record.site.Meaning;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteEye;

/** A hospital's code map as it is written; a section that is not there is empty. */
record SiteCodesYaml(
        @Nullable String version,
        @Nullable List<Code> codes,
        @Nullable List<Unit> units,
        @Nullable List<EyeCode> eyes,
        @Nullable List<String> identifiers,
        @Nullable List<Method> methods) {

    SiteCodes siteCodes() {
        if (version == null || version.isBlank()) {
            throw new IllegalArgumentException("a site's codes have a version");
        }
        return new SiteCodes(
                version,
                listed(codes).stream().map(Code::mapped).toList(),
                listed(units).stream().map(Unit::mapped).toList(),
                listed(eyes).stream().map(EyeCode::mapped).toList(),
                listed(identifiers),
                listed(methods).stream().map(Method::mapped).toList());
    }

    private static <T> List<T> listed(@Nullable List<T> section) {
        return section == null ? List.of() : section;
    }

    private static <T> T needed(@Nullable T value, String what) {
        if (value == null) {
            throw new IllegalArgumentException("an entry has no " + what);
        }
        return value;
    }

    /** A code, what it stands for, and the eye it carries, if it does. */
    record Code(
            @Nullable LocalCode code,
            @Nullable Meaning means,
            @Nullable SiteEye eye) {
        MappedCode mapped() {
            return new MappedCode(needed(code, "code"), needed(means, "means: " + code), eye);
        }
    }

    /** A body site or a qualifier of one. */
    record EyeCode(@Nullable LocalCode code, @Nullable SiteEye eye) {
        MappedEye mapped() {
            return new MappedEye(needed(code, "code"), needed(eye, "eye: " + code));
        }
    }

    /** A biometry method. */
    record Method(@Nullable LocalCode code, @Nullable Meaning means) {
        MappedCode mapped() {
            return new MappedCode(needed(code, "code"), needed(means, "means: " + code), null);
        }
    }

    /** A unit; without a factor it is another word for the UCUM unit. */
    record Unit(
            @Nullable UnitKind kind,
            @Nullable String unit,
            @Nullable String ucum,
            @Nullable BigDecimal factor) {
        MappedUnit mapped() {
            return new MappedUnit(
                    needed(kind, "kind: " + unit),
                    needed(unit, "unit"),
                    needed(ucum, "ucum: " + unit),
                    factor == null ? BigDecimal.ONE : factor);
        }
    }
}
