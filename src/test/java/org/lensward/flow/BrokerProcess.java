package org.lensward.flow;

import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;

/** An Artemis broker in a process of its own, with the queues as hospitals are told to set them up. Arguments: port, folder. */
final class BrokerProcess {

    private static final Path QUEUES = Path.of("src/main/packaging/broker-address-settings.xml");

    private BrokerProcess() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[1]);
        String queues = Files.readString(QUEUES).replaceFirst("<\\?xml[^>]*>", "");
        Path configuration =
                Files.writeString(folder.resolve("broker.xml"), """
                <configuration xmlns="urn:activemq">
                  <core xmlns="urn:activemq:core">
                    <security-enabled>false</security-enabled>
                    <journal-type>NIO</journal-type>
                    <journal-directory>%1$s/journal</journal-directory>
                    <bindings-directory>%1$s/bindings</bindings-directory>
                    <paging-directory>%1$s/paging</paging-directory>
                    <large-messages-directory>%1$s/large</large-messages-directory>
                    <acceptors><acceptor name="all">tcp://localhost:%2$s</acceptor></acceptors>
                    %3$s
                  </core>
                </configuration>
                """.formatted(folder, arguments[0], queues));
        new EmbeddedActiveMQ()
                .setConfigResourcePath(configuration.toUri().toString())
                .start();
    }
}
