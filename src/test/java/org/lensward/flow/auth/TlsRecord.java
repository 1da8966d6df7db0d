package org.lensward.flow.auth;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.TrustManagerFactory;

/** A record over TLS that talks to nobody without the adapter's certificate. Keys are made by the JDK's keytool. */
final class TlsRecord implements AutoCloseable {

    static final String PASSWORD = "for-this-test";

    private final HttpsServer server;

    TlsRecord(Path folder) throws Exception {
        keys(folder, "server", "CN=localhost");
        keys(folder, "adapter", "CN=adapter");
        keys(folder, "stranger", "CN=stranger");
        trust(folder, "server");
        trust(folder, "adapter");
        server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(context(folder)) {
            @Override
            public void configure(HttpsParameters parameters) {
                SSLParameters tls = getSSLContext().getDefaultSSLParameters();
                tls.setNeedClientAuth(true);
                parameters.setSSLParameters(tls);
            }
        });
        byte[] answer =
                "{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"total\":3}".getBytes(StandardCharsets.UTF_8);
        server.createContext("/fhir", exchange -> {
            exchange.getResponseHeaders().set("Content-Type", "application/fhir+json");
            exchange.sendResponseHeaders(200, answer.length);
            exchange.getResponseBody().write(answer);
            exchange.close();
        });
        server.start();
    }

    URI url() {
        return URI.create("https://localhost:" + server.getAddress().getPort() + "/fhir");
    }

    private static void keys(Path folder, String name, String subject) throws Exception {
        keytool(
                folder,
                name + ".p12",
                "-genkeypair",
                "-alias",
                name,
                "-keyalg",
                "EC",
                "-validity",
                "30",
                "-dname",
                subject,
                "-ext",
                "san=dns:localhost");
        keytool(
                folder,
                name + ".p12",
                "-exportcert",
                "-rfc",
                "-alias",
                name,
                "-file",
                folder.resolve(name + ".pem").toString());
    }

    private static void trust(Path folder, String name) throws Exception {
        keytool(
                folder,
                "trust-" + name + ".p12",
                "-importcert",
                "-noprompt",
                "-alias",
                name,
                "-file",
                folder.resolve(name + ".pem").toString());
    }

    private static void keytool(Path folder, String store, String... arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
        command.addAll(List.of(arguments));
        command.addAll(
                List.of("-keystore", folder.resolve(store).toString(), "-storetype", "PKCS12", "-storepass", PASSWORD));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException("keytool: " + said);
        }
    }

    private static SSLContext context(Path folder) throws GeneralSecurityException, IOException {
        KeyManagerFactory keys = KeyManagerFactory.getInstance("PKIX");
        keys.init(store(folder.resolve("server.p12")), PASSWORD.toCharArray());
        TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
        trust.init(store(folder.resolve("trust-adapter.p12")));
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(keys.getKeyManagers(), trust.getTrustManagers(), null);
        return context;
    }

    static KeyStore store(Path file) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(file)) {
            store.load(in, PASSWORD.toCharArray());
        }
        return store;
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
