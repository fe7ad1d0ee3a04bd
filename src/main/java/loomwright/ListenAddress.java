package loomwright;

import static loomwright.message.Arg.arg;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Optional;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/** Tries the address before the web server does, which calls every failure a port in use. */
final class ListenAddress {
    private static final int FIRST_FREE_FOR_ALL = 1024;

    private enum Failure implements MessageCode {
        HOST_UNKNOWN,
        ADDRESS_NOT_HERE,
        PORT_NOT_ALLOWED,
        PORT_IN_USE
    }

    private ListenAddress() {}

    /** Why nothing can listen at an address; empty if something can. */
    static Optional<Message> failure(String host, int port) {
        InetSocketAddress address = new InetSocketAddress(host, port);
        if (address.isUnresolved()) {
            return Optional.of(with(Failure.HOST_UNKNOWN, host, port));
        }
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(address);
            return Optional.empty();
        } catch (IOException cannot) {
            return Optional.of(with(reason(address), host, port));
        }
    }

    private static Failure reason(InetSocketAddress address) {
        if (!isOfThisMachine(address)) {
            return Failure.ADDRESS_NOT_HERE;
        }
        return address.getPort() >= FIRST_FREE_FOR_ALL || isAnswered(address)
                ? Failure.PORT_IN_USE
                : Failure.PORT_NOT_ALLOWED;
    }

    private static boolean isOfThisMachine(InetSocketAddress address) {
        try {
            return address.getAddress().isAnyLocalAddress()
                    || NetworkInterface.getByInetAddress(address.getAddress()) != null;
        } catch (IOException unknown) {
            return false;
        }
    }

    private static boolean isAnswered(InetSocketAddress address) {
        try (Socket socket = new Socket()) {
            socket.connect(address, 1000);
            return true;
        } catch (IOException silent) {
            return false;
        }
    }

    private static Message with(Failure failure, String host, int port) {
        return failure.with(arg("host", host), arg("port", String.valueOf(port)));
    }
}
