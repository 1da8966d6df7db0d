package org.lensward.board;

import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Hands every test the one served day, and stops it after the last. */
public final class ServedDayExtension implements ParameterResolver {

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext test) {
        return parameter.getParameter().getType() == ServedDay.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext test) {
        return test.getRoot()
                .getStore(Namespace.create(ServedDay.class))
                .getOrComputeIfAbsent(ServedDay.class, started -> new ServedDay(), ServedDay.class);
    }
}
