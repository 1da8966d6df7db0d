package org.lensward.demo;

import ca.uhn.fhir.rest.server.RestfulServer;
import jakarta.servlet.ServletRegistration;
import java.util.concurrent.CountDownLatch;
import org.apache.catalina.Context;
import org.apache.catalina.valves.ErrorReportValve;
import org.springframework.boot.web.embedded.tomcat.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.Shutdown;
import org.springframework.boot.web.server.WebServer;

/** The Tomcat in front of the record. */
final class RecordWebServer {

    static final String FHIR_PATH = "/fhir";

    private RecordWebServer() {}

    static WebServer start(int port, RestfulServer fhir) {
        WebServer webServer = create(port, fhir);
        try {
            webServer.start();
            return webServer;
        } catch (RuntimeException failure) {
            webServer.destroy();
            throw failure;
        }
    }

    private static WebServer create(int port, RestfulServer fhir) {
        TomcatServletWebServerFactory factory = new TomcatServletWebServerFactory(port);
        factory.setRegisterDefaultServlet(false);
        factory.setShutdown(Shutdown.GRACEFUL);
        factory.addContextCustomizers(RecordWebServer::hideFailures);
        factory.addConnectorCustomizers(connector -> {
            connector.setProperty("relaxedQueryChars", "|{}[]");
            connector.setMaxPostSize(-1);
        });
        return factory.getWebServer(servlets -> {
            ServletRegistration.Dynamic registration = servlets.addServlet("fhir", fhir);
            registration.addMapping(FHIR_PATH + "/*");
            registration.setLoadOnStartup(1);
        });
    }

    /** Accepts no further request and waits for those under way. */
    static void refuseRequests(WebServer webServer) {
        CountDownLatch idle = new CountDownLatch(1);
        webServer.shutDownGracefully(result -> idle.countDown());
        try {
            idle.await();
        } catch (InterruptedException interruption) {
            Thread.currentThread().interrupt();
        }
    }

    /** Tomcat's own error page, met outside the FHIR path, would show its version and stack traces. */
    private static void hideFailures(Context web) {
        ErrorReportValve valve = new ErrorReportValve();
        valve.setShowReport(false);
        valve.setShowServerInfo(false);
        web.getParent().getPipeline().addValve(valve);
    }
}
