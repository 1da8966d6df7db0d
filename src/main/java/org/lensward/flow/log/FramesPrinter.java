package org.lensward.flow.log;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.logging.StackTracePrinter;

/** As {@link FramesOnly}, for structured logs. */
public final class FramesPrinter implements StackTracePrinter {

    @Override
    public void printStackTrace(Throwable failure, Appendable out) throws IOException {
        StringBuilder text = new StringBuilder();
        for (@Nullable Throwable each = failure; each != null; each = each.getCause()) {
            Frames.append(text, each.getClass().getName(), each.getStackTrace());
        }
        out.append(text);
    }
}
