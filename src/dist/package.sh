#!/bin/sh
# Puts the one jar, the start script and what goes with them into an archive and, where dpkg-deb is, a Debian package.
#   package.sh VERSION JAR TARGET JDK    run by mvn -Pdist package
set -eu
version=$1 shaded=$2 target=$3 jdk=$4
here=$(dirname "$0")
root=$here/../..
work=$target/dist
name=loomwright-$version
rm -rf "$work"
umask 022
mkdir -p "$work/$name"

# YAML takes long to read at each start: the contract goes in as JSON as well.
jar=$work/loomwright.jar
cp "$shaded" "$jar"
"$jdk/bin/java" -cp "$jar" loomwright.service.input.ContractAsJson "$work/openapi.json"
"$jdk/bin/jar" --update --file "$jar" -C "$work" openapi.json

cp "$jar" "$work/$name"
cp "$here/loomwright" "$here/debian/loomwright.service" "$root/README.md" "$root/openapi.yaml" "$work/$name"
cp -r "$root/docs" "$root/postman-free-examples" "$work/$name"
tar -C "$work" --owner=0 --group=0 --sort=name -czf "$target/$name.tar.gz" "$name"
echo "$target/$name.tar.gz"

if ! command -v dpkg-deb >"$work/dpkg-deb"; then
    echo "no dpkg-deb here, so no Debian package"
    exit 0
fi
deb=$work/deb
mkdir -p "$deb/DEBIAN" "$deb/usr/bin" "$deb/usr/lib/loomwright" "$deb/usr/share/doc/loomwright" \
    "$deb/lib/systemd/system" "$deb/etc/default"
cp "$jar" "$deb/usr/lib/loomwright"
cp "$here/loomwright" "$deb/usr/lib/loomwright"
ln -s ../lib/loomwright/loomwright "$deb/usr/bin/loomwright"
cp "$here/debian/loomwright.service" "$deb/lib/systemd/system"
cp "$here/debian/default" "$deb/etc/default/loomwright"
cp -r "$root/docs/." "$root/postman-free-examples" "$deb/usr/share/doc/loomwright"
for script in postinst prerm postrm; do
    cp "$here/debian/$script" "$deb/DEBIAN"
    chmod 755 "$deb/DEBIAN/$script"
done
echo /etc/default/loomwright >"$deb/DEBIAN/conffiles"
# A tilde sorts before the release.
cat >"$deb/DEBIAN/control" <<CONTROL
Package: loomwright
Version: $(echo "$version" | sed 's/-/~/')
Architecture: all
Maintainer: Loomwright <loomwright@loomwright.invalid>
Depends: openjdk-17-jre-headless | java17-runtime-headless
Recommends: fontconfig, fonts-dejavu-core
Section: web
Priority: optional
Installed-Size: $(du -sk "$deb" | cut -f1)
Description: calculations on a vehicle's low-voltage wiring over HTTP
 A service that works out voltages, currents, backfeeds, wire and fuse sizes
 and ignition figures for the wiring of older vehicles, and a command that
 checks files of plans.
CONTROL
dpkg-deb --root-owner-group --build "$deb" "$target/${name}.deb"
