package org.lensward.board.gate;

import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** A request whose body was read already. */
final class ReadRequest extends HttpServletRequestWrapper {

    private final byte[] body;

    ReadRequest(HttpServletRequest request, byte[] body) {
        super(request);
        this.body = body;
    }

    @Override
    public ServletInputStream getInputStream() {
        return new Bytes(body);
    }

    @Override
    public BufferedReader getReader() {
        String named = getCharacterEncoding();
        Charset charset = named == null ? StandardCharsets.UTF_8 : Charset.forName(named);
        return new BufferedReader(new InputStreamReader(getInputStream(), charset));
    }

    /** All of it is there from the beginning. */
    private static final class Bytes extends ServletInputStream {

        private final ByteArrayInputStream bytes;

        Bytes(byte[] body) {
            this.bytes = new ByteArrayInputStream(body);
        }

        @Override
        public int read() {
            return bytes.read();
        }

        @Override
        public int read(byte[] into, int from, int length) {
            return bytes.read(into, from, length);
        }

        @Override
        public boolean isFinished() {
            return bytes.available() == 0;
        }

        @Override
        public boolean isReady() {
            return true;
        }

        @Override
        public void setReadListener(ReadListener listener) {
            try {
                listener.onDataAvailable();
                listener.onAllDataRead();
            } catch (IOException failure) {
                listener.onError(failure);
            }
        }
    }
}
