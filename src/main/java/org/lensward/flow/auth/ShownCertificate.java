package org.lensward.flow.auth;

import java.io.IOException;
import javax.net.ssl.SSLSession;
import org.apache.http.HttpResponse;
import org.apache.http.HttpResponseInterceptor;
import org.apache.http.conn.ManagedHttpClientConnection;
import org.apache.http.protocol.HttpContext;
import org.apache.http.protocol.HttpCoreContext;

/** Notes the certificate that the record showed on the connection. */
final class ShownCertificate implements HttpResponseInterceptor {

    private final Certificates certificates;

    ShownCertificate(Certificates certificates) {
        this.certificates = certificates;
    }

    @Override
    public void process(HttpResponse response, HttpContext context) throws IOException {
        if (HttpCoreContext.adapt(context).getConnection() instanceof ManagedHttpClientConnection connection
                && connection.isOpen()) {
            SSLSession session = connection.getSSLSession();
            if (session != null) {
                certificates.shown(session.getPeerCertificates());
            }
        }
    }
}
