package org.lensward.flow;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** A plain sender of MLLP over a socket, with no code of the adapter's in it. */
final class MllpClient implements AutoCloseable {

    private final Socket socket;
    private final InputStream in;
    private final OutputStream out;

    MllpClient(int port) throws IOException {
        socket = new Socket(InetAddress.getLoopbackAddress(), port);
        socket.setSoTimeout(60_000);
        in = new BufferedInputStream(socket.getInputStream());
        out = socket.getOutputStream();
    }

    static byte[] framed(byte[] message) {
        ByteArrayOutputStream frame = new ByteArrayOutputStream();
        frame.write(0x0b);
        frame.writeBytes(message);
        frame.write(0x1c);
        frame.write(0x0d);
        return frame.toByteArray();
    }

    void write(byte[] bytes) throws IOException {
        out.write(bytes);
        out.flush();
    }

    /** The next answer. */
    String read() throws IOException {
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        int next = in.read();
        if (next != 0x0b) {
            throw new IOException("No answer begins with " + next);
        }
        for (next = in.read(); next != 0x1c; next = in.read()) {
            if (next < 0) {
                throw new IOException("Cut short");
            }
            answer.write(next);
        }
        in.read();
        return answer.toString(StandardCharsets.UTF_8);
    }

    String ask(byte[] message) throws IOException {
        write(framed(message));
        return read();
    }

    /** Cuts the connection, unread answers and all. */
    void cut() throws IOException {
        socket.setSoLinger(true, 0);
        socket.close();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
