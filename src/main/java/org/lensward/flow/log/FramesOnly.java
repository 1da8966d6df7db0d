package org.lensward.flow.log;

import ch.qos.logback.classic.pattern.ThrowableHandlingConverter;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;
import java.util.Arrays;

/** Where it failed, without the words of the failure: those of a server or a parser may repeat what a patient's record says. */
public final class FramesOnly extends ThrowableHandlingConverter {

    @Override
    public String convert(ILoggingEvent event) {
        StringBuilder text = new StringBuilder();
        for (IThrowableProxy each = event.getThrowableProxy(); each != null; each = each.getCause()) {
            StackTraceElement[] frames = Arrays.stream(each.getStackTraceElementProxyArray())
                    .map(StackTraceElementProxy::getStackTraceElement)
                    .toArray(StackTraceElement[]::new);
            Frames.append(text, each.getClassName(), frames);
        }
        return text.toString();
    }
}
